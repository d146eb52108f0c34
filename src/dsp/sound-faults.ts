// Faults that make a stretch of sound unfit for measuring: clipping and lost samples.

/** Samples at or beyond this are at the top of the converter. */
const fullScale = 0.985;
/** That many samples at the top in a row are clipping, not a lucky peak. */
const clippedRun = 3;
/** A browser fills lost audio with at least a render quantum of exact zeros (128 samples; a device buffer is 10 ms). */
export const lostRun = 64;
/** Below this a quiet ending may be exact zeros by itself, linear. */
const quietAmplitude = 5e-4;

/** Whether `samples[from…to)` holds a run at full scale. */
export function isClipped(samples: Float32Array, from: number, to: number): boolean {
  let run = 0;
  for (let n = from; n < to; n++) {
    run = Math.abs(samples[n] ?? 0) >= fullScale ? run + 1 : 0;
    if (run >= clippedRun) return true;
  }
  return false;
}

/** Whether `samples[from…to)` holds a hole: a run of exact zeros with audible sound on both sides. */
export function hasLostAudio(samples: Float32Array, from: number, to: number): boolean {
  let run = 0;
  let loudestBefore = 0;
  for (let n = from; n < to; n++) {
    const sample = Math.abs(samples[n] ?? 0);
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

/** Largest absolute sample in `samples[from…to)`. */
export function peakOf(samples: Float32Array, from: number, to: number): number {
  let peak = 0;
  for (let n = from; n < to; n++) peak = Math.max(peak, Math.abs(samples[n] ?? 0));
  return peak;
}
