// Faults that make a stretch of sound unfit for measuring: clipping and lost samples.
import { peakOf } from '../numbers/power-and-peak';

/** Samples at or beyond this are at the top of the converter (this and the next: common practice, no source). */
const fullScale = 0.985;
/** This many samples in a row at the top are clipping, not a lucky peak … */
const clippedRun = 3;
/** … if they are as flat as this, or at the converter's very end: a loud wave of 260 Hz that just fits is rounder. */
const flatTop = 3e-4;
const veryEnd = 0.999;
/**
 * Part of the first quarter of a second that lies within 3 % of its peak: only a limiter makes that much …
 * … or this much, if half waves that get there stay there for such a part of their length (a steady sine: 0.16) …
 * … or this much, if there are so many times more samples in the last 2 % than in the 8 % below. 315 clean sounds
 * (seeded scenes, basses, practice pan, real strikes, steady notes) reach 0.0156; 0.13 from 0.01 on; 0.56 from 0.004 on.
 */
const largestTop = 0.022;
const longTop = { share: 0.01, flat: 0.2 };
const piledTop = { share: 0.004, over: 0.8 };
/** A browser fills lost audio with at least a render quantum of exact zeros (128 samples; a device buffer is 10 ms). */
export const lostRun = 64;
/** A quiet ending below this may be exact zeros by itself, linear (chosen, no source). */
const quietAmplitude = 5e-4;

/** Whether `samples[from…to)` holds a flat run at full scale. */
export function isClipped(samples: Float32Array, from: number, to: number): boolean {
  let run = 0;
  let highest = 0;
  let flat = 0;
  let before = 0;
  for (let n = from; n < to; n++) {
    const size = Math.abs(samples[n]);
    const isTop = size >= fullScale;
    run = isTop ? run + 1 : 0;
    highest = isTop ? Math.max(highest, size) : 0;
    flat = isTop && Math.abs(size - before) <= flatTop ? flat + 1 : 1;
    before = size;
    if (run >= clippedRun && (flat >= clippedRun || highest >= veryEnd)) return true;
  }
  return false;
}

/**
 * Whether the tops of a struck note in `samples[from…to)` are flat below full scale, as a limiter or an overdriven
 * microphone leaves them. A note that fades is near its own peak for a few moments only.
 */
export function isFlatTopped(samples: Float32Array, from: number, to: number): boolean {
  const peak = peakOf(samples, from, to);
  let upper = 0;
  let highest = 0;
  // Samples near the peak, and lengths of the half waves that reach it; the newest half wave is counted apart.
  let top = 0;
  let length = 0;
  let topNow = 0;
  let lengthNow = 0;
  let wasUp = false;
  for (let n = from; n < to; n++) {
    const part = samples[n] / peak;
    const isUp = part >= 0;
    if (isUp !== wasUp) {
      if (topNow > 0) length += lengthNow;
      top += topNow;
      topNow = 0;
      lengthNow = 0;
      wasUp = isUp;
    }
    lengthNow++;
    const size = Math.abs(part);
    if (size >= 0.97) topNow++;
    if (size >= 0.98) highest++;
    else if (size >= 0.9) upper++;
  }
  const share = top / Math.max(1, to - from);
  return (
    share >= largestTop ||
    (share >= longTop.share && top >= longTop.flat * length) ||
    (share >= piledTop.share && highest >= piledTop.over * (upper + 1))
  );
}

/** Whether `samples[from…to)` holds a hole: a run of exact zeros with audible sound on both sides. */
export function hasLostAudio(samples: Float32Array, from: number, to: number): boolean {
  let run = 0;
  let loudestBefore = 0;
  for (let n = from; n < to; n++) {
    const sample = Math.abs(samples[n]);
    if (sample === 0) {
      run++;
      continue;
    }
    if (run >= lostRun && loudestBefore > quietAmplitude) return true;
    loudestBefore = Math.max(sample, loudestBefore * 0.998);
    run = 0;
  }
  return false;
}

/** Where the sound in `samples[from…to)` ends: before a closing run of exact zeros, else at `to`. */
export function endOfSound(samples: Float32Array, from: number, to: number): number {
  let end = to;
  while (end > from && samples[end - 1] === 0) end--;
  return to - end >= lostRun ? end : to;
}
