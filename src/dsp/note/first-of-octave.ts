// Which of two notes an octave apart was struck: the one whose line was there first. The lower note's octave blooms,
// and a lower note that rings along is passed on slower still.
import type { ListeningContext } from '../../domain/measurement/strike';
import { centsBetween, type MidiNote, midiNote } from '../../domain/tuning/units';
import type { TimedLine } from '../spectrum/line-course';
import type { NoteChoice } from './bass-choices';

/** How far the upper note's line may lie from the lower one's octave, cents. */
const reachOfOctave = 110;
/**
 * In the first moments (`TimedLine.touch`) the lower line over the upper one, dB: even odds, and nepers of odds for
 * each dB. On 1,132 pairs of seeded scenes (other seeds than the benchmark's) the struck upper notes lie below −11.5
 * but for two, the struck lower ones above −6 but for two; on real strikes, all of them lower notes, above +15.
 */
const evenDb = -8.5;
const perDb = 1.2;
/** A steep high-pass of a phone takes something of a lower line below this, Hz: −1 dB (fourth order at 150 Hz). */
const clearHz = 180;
/** Odds for the note that is to be struck, nepers, and what a neper is worth in score (as for basses). */
const forExpected = 1;
const scorePerNeper = 0.75;

/** The choices with any two an octave apart set against each other; low notes, which phones lose, are left as they are. */
export function withFirstOfOctave(
  choices: readonly NoteChoice[],
  lines: readonly TimedLine[],
  { expected }: ListeningContext,
): readonly NoteChoice[] {
  const weighed = new Map<MidiNote, NoteChoice>(choices.map((each) => [each.note, each]));
  const lowFirst = [...weighed.keys()].sort((a, b) => a - b);
  for (const note of lowFirst) {
    const [lower, upper] = [weighed.get(note), weighed.get(midiNote(note + 12))];
    const low = lower && lines[lower.line];
    const high = upper && lines[upper.line];
    if (!low || !high || lower.fundamental !== 'heard' || upper.fundamental !== 'heard') continue;
    if (low.hz < clearHz) continue;
    if (Math.abs(centsBetween(2 * low.hz, high.hz)) > reachOfOctave) continue;
    const hint = expected === lower.note ? 1 : expected === upper.note ? -1 : 0;
    const odds = perDb * (overDb(low, high) - evenDb) + forExpected * hint;
    const best = Math.max(lower.score, upper.score);
    const less = best - scorePerNeper * Math.abs(odds);
    weighed.set(lower.note, { ...lower, score: odds > 0 ? best : less });
    weighed.set(upper.note, { ...upper, score: odds > 0 ? less : best });
  }
  return [...weighed.values()];
}

const overDb = (low: TimedLine, high: TimedLine): number =>
  20 * Math.log10(Math.max(low.touch, 1e-9) / Math.max(high.touch, 1e-9));
