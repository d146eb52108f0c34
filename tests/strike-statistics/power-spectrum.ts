// The power spectrum of a part of a sound.
import { RealFourier } from '../../src/dsp/numbers/fourier';
import type { Sound } from './band-course';

export interface PowerSpectrum {
  readonly power: Float64Array;
  /** Hz from bin to bin. */
  readonly step: number;
}

const transforms = new Map<number, RealFourier>();

/** Power of the samples between `from` and `to` s, zero-padded to `size`, as they are or under a Hann window. */
export function powerSpectrum(
  { samples, sampleRate }: Sound,
  from: number,
  to: number,
  size: number,
  window: 'plain' | 'hann',
): PowerSpectrum {
  const transform = transforms.get(size) ?? new RealFourier(size);
  transforms.set(size, transform);
  const first = Math.max(0, Math.round(from * sampleRate));
  const count = Math.min(samples.length, Math.round(to * sampleRate), first + size) - first;
  const input = new Float64Array(size);
  for (let n = 0; n < count; n++) {
    const bell = window === 'hann' ? 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / count) : 1;
    input[n] = bell * (samples[first + n] ?? 0);
  }
  transform.transform(input);
  const { spectrum } = transform;
  return {
    power: Float64Array.from(
      { length: size / 2 },
      (_, k) => (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2,
    ),
    step: sampleRate / size,
  };
}

/** The frequency of the strongest bin between `low` and `high` Hz, refined by a parabola through the logarithms. */
export function strongestBetween(
  { power, step }: PowerSpectrum,
  low: number,
  high: number,
): number {
  let best = Math.max(1, Math.ceil(low / step));
  for (let k = best; k <= Math.floor(high / step); k++) {
    if ((power[k] ?? 0) > (power[best] ?? 0)) best = k;
  }
  const log = (k: number): number => Math.log(Math.max(power[k] ?? 0, 1e-300));
  const [before, middle, after] = [log(best - 1), log(best), log(best + 1)];
  const bend = before - 2 * middle + after;
  const shift = bend < 0 ? (before - after) / (2 * bend) : 0;
  return (best + Math.max(-0.5, Math.min(0.5, shift))) * step;
}
