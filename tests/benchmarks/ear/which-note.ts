// Which note was struck: right, asked for, wrong, or not taken as a strike.
import type { Heard, ListeningContext } from '../../../src/domain/measurement/strike';
import { midiNote } from '../../../src/domain/tuning/units';
import { anyNote, finallyHeard } from '../../dsp/listen-to';
import type { Scene } from '../../sounds/scene';
import { realStrikes } from '../../synthetic-sounds/real-strike';
import { placed } from '../../synthetic-sounds/sounds';
import { guidedTo, hearScene, panNotes } from './hear-scene';

export type NoteOutcome = 'right' | 'asked' | 'wrong' | 'refused';

export function noteOutcome(note: number, heard: Heard | null): NoteOutcome {
  if (heard?.kind === 'strike') return heard.note === note ? 'right' : 'wrong';
  return heard?.kind === 'refused' && heard.reason === 'which-note' ? 'asked' : 'refused';
}

export const countOf = (outcomes: readonly NoteOutcome[], outcome: NoteOutcome): number =>
  outcomes.filter((each) => each === outcome).length;

/** Whether a strike on another note than the expected one is refused by its right name. */
export function isRefusedByName(scene: Scene): boolean {
  const { note } = scene.truth;
  // A wrong note that is neither an octave away nor the next semitone: the usual slip on a pan is a neighbour.
  const other = panNotes.includes(midiNote(note + 5)) ? note + 5 : note - 5;
  const heard = hearScene(scene, guidedTo(other));
  return heard?.kind === 'refused' && heard.reason === 'wrong-note' && heard.note === note;
}

/**
 * The notes of the real recordings (A4 = 440 Hz): their fundamentals, measured by a plain spectrum, lie
 * at 367, 520, 735 and 1039 Hz, 11 to 13 cents under these notes. The bank's names are an octave higher.
 */
const realNotes = [66, 72, 78, 84];

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
