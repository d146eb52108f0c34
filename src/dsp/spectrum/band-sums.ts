// Sums and differences of narrow bands.
import type { BandSignal } from './band-signal';
import type { DampedLine } from './damped-line';

/** Mean square of the band's samples. */
export function powerOf({ re, im, count }: BandSignal): number {
  let sum = 0;
  for (let n = 0; n < count; n++) sum += re[n] ** 2 + im[n] ** 2;
  return sum / count;
}

/** `a` + `sign`·`b`, sample by sample. */
export function sum(a: BandSignal, b: Pick<BandSignal, 're' | 'im'>, sign = 1): BandSignal {
  const re = a.work.take(a.count);
  const im = a.work.take(a.count);
  for (let n = 0; n < a.count; n++) {
    re[n] = a.re[n] + sign * b.re[n];
    im[n] = a.im[n] + sign * b.im[n];
  }
  return { ...a, re, im };
}

export const difference = (a: BandSignal, b: Pick<BandSignal, 're' | 'im'>): BandSignal =>
  sum(a, b, -1);

/** The band less the given lines. */
export function withoutDamped(band: BandSignal, lines: readonly DampedLine[]): BandSignal {
  if (lines.length === 0) return band;
  const { count, rate, work } = band;
  const re = work.take(count);
  const im = work.take(count);
  let from = band;
  for (const { amplitude, decayRate, phase, offsetHz } of lines) {
    const turn = (2 * Math.PI * offsetHz) / rate;
    const fade = Math.exp(-decayRate / rate);
    const stepCos = fade * Math.cos(turn);
    const stepSin = fade * Math.sin(turn);
    let x = amplitude * Math.cos(phase);
    let y = amplitude * Math.sin(phase);
    for (let n = 0; n < count; n++) {
      re[n] = from.re[n] - x;
      im[n] = from.im[n] - y;
      const next = x * stepCos - y * stepSin;
      y = x * stepSin + y * stepCos;
      x = next;
    }
    from = { ...band, re, im };
  }
  return from;
}

/**
 * Σ z·exp(−(decay + i·turn)·n) over `count` samples from `from` on, n counted from 0 there, by a pointer that turns
 * and shrinks from one to the next.
 */
export function project(
  re: Float64Array,
  im: Float64Array,
  count: number,
  decay: number,
  turn: number,
  from = 0,
): [number, number] {
  const fade = Math.exp(-decay);
  const stepCos = fade * Math.cos(turn);
  const stepSin = fade * Math.sin(turn);
  let cos = 1;
  let sin = 0;
  let sumRe = 0;
  let sumIm = 0;
  for (let n = from; n < from + count; n++) {
    const a = re[n];
    const b = im[n];
    sumRe += a * cos + b * sin;
    sumIm += b * cos - a * sin;
    const next = cos * stepCos - sin * stepSin;
    sin = cos * stepSin + sin * stepCos;
    cos = next;
  }
  return [sumRe, sumIm];
}
