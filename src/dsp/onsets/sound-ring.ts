// The newest sound of a stream in a ring: sample n of the stream is in slot n modulo the ring's length.
import { dbOfPower } from '../../domain/numbers/decibel-levels';

/** Copies `count` samples of a block into the ring from slot `at` on; anything that is not a number becomes silence. */
export function copyIntoRing(
  ring: Float32Array,
  at: number,
  block: Float32Array,
  from: number,
  count: number,
): void {
  for (let n = 0; n < count; n++) {
    const value = block[from + n];
    ring[at + n] = Number.isFinite(value) ? Math.max(-8, Math.min(8, value)) : 0;
  }
}

/** Fills `segment` with `count` samples from sample `start` on; what was before the first sample is silence. */
export function copyFromRing(
  ring: Float32Array,
  start: number,
  segment: Float32Array,
  count: number,
): void {
  const silent = Math.max(0, -start);
  segment.fill(0, 0, silent);
  let position = (start + silent) % ring.length;
  for (let n = silent; n < count; n++) {
    segment[n] = ring[position];
    if (++position === ring.length) position = 0;
  }
}

/** Level of the loudest stretch of `size` samples from sample `start` to `end`, dB. */
export function loudestInRing(
  ring: Float32Array,
  start: number,
  end: number,
  size: number,
): number {
  let loudest = 0;
  for (let from = Math.max(0, start); from + size <= end; from += size) {
    let energy = 0;
    for (let n = from; n < from + size; n++) energy += ring[n % ring.length] ** 2;
    loudest = Math.max(loudest, energy / size);
  }
  return dbOfPower(loudest, 1e-20);
}
