// Bass notes through a phone's microphone: printed, without a target.
import { midiNote } from '../../../src/domain/tuning/units';
import { anyNote } from '../../dsp/listen-to';
import { strikeScene } from '../../sounds/scene';
import { errorsOf, hearScene } from './hear-scene';
import { type NoteOutcome, noteOutcome } from './which-note';

export interface LowNotes {
  readonly outcomes: readonly NoteOutcome[];
  /** Absolute errors of the octave, cents, where it was heard. */
  readonly octaveErrors: readonly number[];
  readonly inferred: number;
}

/** B0 to B2, told the pan's notes. */
export function lowNotes(seeds: readonly number[]): LowNotes {
  const lowest = 23;
  const highest = 47;
  const notes = Array.from({ length: highest - lowest + 1 }, (_, n) => midiNote(lowest + n));
  const octaveErrors: number[] = [];
  let inferred = 0;
  const outcomes = seeds.map((seed) => {
    const scene = strikeScene(seed, { lowest, highest });
    const heard = hearScene(scene, { ...anyNote, notes });
    const { octave } = errorsOf({ scene, heard });
    if (octave) octaveErrors.push(Math.abs(octave.error));
    if (heard?.kind === 'strike' && heard.isInferred) inferred++;
    return noteOutcome(scene.truth.note, heard);
  });
  return { outcomes, octaveErrors, inferred };
}
