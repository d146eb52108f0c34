// Where a sound that is stopped, by a hand or by the end of a recording, ends.
import { powerOfDb } from '../../domain/numbers/decibel-levels';
import { meanPower } from '../numbers/power-and-peak';

/** Levels are taken over blocks of this length, s, and compared across this many of them (both chosen, no source). */
const blockSeconds = 0.008;
const blocksBetween = 3;
/**
 * No note fades this much in that time by itself, dB (T60 0.4 s: 4 dB); the trough of a beat does, but comes up again.
 */
const leastFallDb = 15;
/**
 * A fast fall earlier than this belongs to the sound itself, s; and if it were a stop, too little would be left to
 * measure.
 */
const earliestSeconds = 0.26;

/**
 * The sample at which the sound of a strike at sample `onset` stops before sample `count`, or `count` if it fades by
 * itself. What comes after a stop is no part of the decay, and must not be fitted as such.
 */
export function endOfStoppedSound(
  samples: Float32Array,
  onset: number,
  count: number,
  rate: number,
): number {
  const size = Math.max(1, Math.round(blockSeconds * rate));
  const fall = powerOfDb(-leastFallDb);
  const first = onset + Math.round(earliestSeconds * rate);
  // From the end back: the loudest block from here on.
  let loudestAfter = 0;
  let end = count;
  for (let from = count - size; from >= first; from -= size) {
    loudestAfter = Math.max(loudestAfter, meanPower(samples, from, from + size));
    const before = meanPower(
      samples,
      from - blocksBetween * size,
      from - (blocksBetween - 1) * size,
    );
    if (loudestAfter < fall * before) end = from - (blocksBetween - 1) * size;
  }
  return end;
}
