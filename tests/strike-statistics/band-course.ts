// The course of one partial: the sound turned down by its frequency, seen through a short bell.
import { type Complex, complex } from './complex';

export interface Sound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

/**
 * Complex amplitude at `hz` at each of `times` (s from the first sample), through a Hann window of `width` s around
 * it: a steady sine of amplitude 1 at `hz` gives 1. Lines 2/width, 3/width, … Hz away give nothing.
 */
export function amplitudesAt(
  { samples, sampleRate }: Sound,
  hz: number,
  width: number,
  times: readonly number[],
): Complex[] {
  const half = Math.max(1, Math.round((width * sampleRate) / 2));
  const turn = (2 * Math.PI * hz) / sampleRate;
  // Turned down once; samples outside the sound are silence.
  const first = Math.round(Math.min(...times) * sampleRate) - half;
  const count = Math.round(Math.max(...times) * sampleRate) + half - first + 1;
  const sine = new Float64Array(count);
  const cosine = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    const value = samples[first + k] ?? 0;
    cosine[k] = value * Math.cos(turn * (first + k));
    sine[k] = -value * Math.sin(turn * (first + k));
  }
  const bell = Float64Array.from(
    { length: 2 * half + 1 },
    (_, k) => (0.5 - 0.5 * Math.cos((Math.PI * k) / half)) / half,
  );
  return times.map((time) => {
    const start = Math.round(time * sampleRate) - half - first;
    let re = 0;
    let im = 0;
    for (let k = 0; k < bell.length; k++) {
      re += (bell[k] ?? 0) * (cosine[start + k] ?? 0);
      im += (bell[k] ?? 0) * (sine[start + k] ?? 0);
    }
    return complex(2 * re, 2 * im);
  });
}

/** From `from` to `to` in steps of `step`. */
export const timesFrom = (from: number, to: number, step: number): number[] =>
  Array.from(
    { length: Math.max(0, Math.floor((to - from) / step + 1e-9) + 1) },
    (_, n) => from + n * step,
  );
