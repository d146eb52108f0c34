// Whether a bass note was struck or the note an octave above it, where level and order of the lines say little:
// a phone weakens the fundamental of the lower one, or does not hear it at all.
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { centsBetween } from '../../domain/tuning/units';
import type { TimedLine } from '../spectrum/line-course';

/**
 * Below this a phone's microphone may lose a fundamental, Hz: their high-passes lie at 60 to 150 Hz (from memory,
 * not measured).
 */
export const deafBelowHz = 120;
/** How far a partial may lie from its place against the octave, cents. */
const reach = 70;
/**
 * Weights, in nepers of odds, from a logistic regression on the bass notes of 1,200 seeded scenes (with four kinds of
 * microphone and pan, and other seeds than the benchmark's), rounded. What is the note's own rises at once, like its
 * fundamental; its octave blooms, and whatever rings along rises slowest.
 */
const weights = {
  always: 2,
  lowLine: 2.7,
  lowLevel: 0.16,
  lowRise: 0.8,
  midRise: -0.85,
  highLine: -0.4,
  highRise: 0.65,
};
/** A line at one and a half times the octave is the lower note's twelfth; the upper one has nothing there. */
const forTwelfth = 3;
const faintestTwelfthDb = -20;
/** Lines at three and four times the octave are the upper note's; the lower one's sixth and eighth are weak. */
const againstThird = 2;
const againstFourth = 2.5;

/** Nothing that rings along is louder than what was struck: a lower line that is louder is the struck one. */
const perLouderDb = 0.6;

const decibel = (ratio: number): number => dbOfAmplitude(ratio, 1e-7);
const within = (value: number, low: number, high: number): number =>
  Math.max(low, Math.min(high, value));
/** What was there in the first turns against the settled level, dB. */
const riseOf = ({ first, settled }: TimedLine): number =>
  within(decibel(first / Math.max(settled, 1e-9)), -10, 6);

/**
 * Odds, natural logarithm, that the note whose octave is `octave` was struck (positive), or else the note whose
 * fundamental it is; one of the two was.
 */
export function oddsOfLower(lines: readonly TimedLine[], octave: TimedLine): number {
  const at = (times: number): TimedLine | null => {
    let found: TimedLine | null = null;
    for (const line of lines) {
      const isThere = Math.abs(centsBetween(times * octave.hz, line.hz)) <= reach;
      if (isThere && line !== octave && line.settled > (found?.settled ?? 0)) found = line;
    }
    return found;
  };
  const over = (line: TimedLine): number => decibel(line.settled / octave.settled);
  const [low, twelfth, high] = [at(0.5), at(1.5), at(2)];
  let odds = weights.always + weights.midRise * riseOf(octave);
  if (low) {
    odds += weights.lowLine + weights.lowLevel * within(over(low), -30, 10);
    odds += weights.lowRise * riseOf(low) + perLouderDb * Math.max(0, over(low));
  }
  if (high) odds += weights.highLine + weights.highRise * riseOf(high);
  if (twelfth && over(twelfth) > faintestTwelfthDb) odds += forTwelfth;
  if (at(3)) odds -= againstThird;
  if (at(4)) odds -= againstFourth;
  return odds;
}
