// Which note was struck: right, asked for, wrong, or not taken as a strike.
import type { Heard, ListeningContext } from '../../src/domain/measurement/strike';
import { midiNote } from '../../src/domain/tuning/units';
import { anyNote, finallyHeard } from '../dsp/listen-to';
import type { Scene } from '../sounds/scene';
import { realStrikes } from '../synthetic-sounds/real-strike';
import { placed } from '../synthetic-sounds/sounds';
import { guidedTo, hearScene, panNotes } from './hear-scene';

export type NoteOutcome = 'right' | 'asked' | 'wrong' | 'refused';

export function noteOutcome(note: number, heard: Heard | null): NoteOutcome {
  if (heard?.kind === 'strike') return heard.note === note ? 'right' : 'wrong';
  return heard?.kind === 'refused' && heard.reason === 'which-note' ? 'asked' : 'refused';
}

export const countOf = (outcomes: readonly NoteOutcome[], outcome: NoteOutcome): number =>
  outcomes.filter((each) => each === outcome).length;

/** What becomes of a strike on another note than the expected one: only the first is right. */
export type WrongNoteOutcome = 'refused by name' | 'refused otherwise' | 'recorded';

/** A fourth away from the struck note, on the pan: neither an octave nor the next semitone. */
const otherNote = (note: number): number =>
  panNotes.includes(midiNote(note + 5)) ? note + 5 : note - 5;

export function wrongNoteOutcome(scene: Scene): WrongNoteOutcome {
  const { note } = scene.truth;
  const heard = hearScene(scene, guidedTo(otherNote(note)));
  if (heard?.kind === 'strike') return 'recorded';
  return heard?.kind === 'refused' && heard.reason === 'wrong-note' && heard.note === note
    ? 'refused by name'
    : 'refused otherwise';
}

/**
 * The notes of the real recordings (A4 = 440 Hz): their fundamentals, measured by a plain spectrum, lie
 * at 367, 520, 735 and 1039 Hz, 11 to 13 cents under these notes. The bank's names are an octave higher.
 */
export const realNotes = [66, 72, 78, 84];

/** The outcome for each real recording. */
export async function realOutcomes(
  context: ListeningContext = { ...anyNote, notes: panNotes },
): Promise<readonly NoteOutcome[]> {
  const strikes = await realStrikes();
  return strikes.map(({ samples, sampleRate }, n) => {
    const seconds = 1.3 + samples.length / sampleRate;
    const whole = placed([{ at: 0.3, samples }], { sampleRate, seconds });
    const heard = finallyHeard(whole, sampleRate, context);
    return noteOutcome(
      realNotes[n] ?? 0,
      heard.find((each) => each.kind === 'strike') ?? heard[0] ?? null,
    );
  });
}
