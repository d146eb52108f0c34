// Where a strike begins, to a millisecond: noise and a stick's touch make the onset detector early, by up to 6 ms.
// Limits are chosen, no source.
import { meanPower } from '../numbers/power-and-peak';

const blockSeconds = 0.001;
/** Looked at before the onset, s, and searched around it. */
const quiet = { from: -0.03, to: -0.008 };
const search = { from: -0.004, to: 0.016 };
/** The strike has begun when this fraction of the largest power that it adds is there. */
const partOfLargest = 0.1;
/** A strike adds at least this many times what was there before; otherwise its onset is left as it is. */
const leastGain = 2;

/** The sample at which the strike near `onset` (sample of `segment`) begins. */
export function sharpOnset(segment: Float32Array, onset: number, rate: number): number {
  const block = Math.max(1, Math.round(blockSeconds * rate));
  const at = (seconds: number): number => Math.max(0, onset + Math.round(seconds * rate));
  const before = meanPower(segment, at(quiet.from), at(quiet.to));
  let largest = 0;
  for (let from = at(search.from); from + block <= at(search.to); from += block) {
    largest = Math.max(largest, meanPower(segment, from, from + block));
  }
  if (!(largest > (1 + leastGain) * before)) return onset;
  const enough = before + partOfLargest * (largest - before);
  for (let from = at(search.from); from + block <= at(search.to); from += block) {
    if (meanPower(segment, from, from + block) >= enough) return from;
  }
  return onset;
}
