// How strong a stretch of sound is.

/** Mean square of `samples[from…to)`, as far as the array goes; 0 if there are none. */
export function meanPower(samples: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let n = Math.max(0, from); n < to; n++) sum += samples[n] ** 2;
  return sum / Math.max(1, to - from);
}

/** Largest absolute sample in `samples[from…to)`. */
export function peakOf(samples: Float32Array, from: number, to: number): number {
  let peak = 0;
  for (let n = from; n < to; n++) peak = Math.max(peak, Math.abs(samples[n]));
  return peak;
}
