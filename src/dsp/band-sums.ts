// Sums and differences of narrow bands.
import type { BandSignal, DampedLine } from './fit-damped-lines';

/** Mean square of the band's samples. */
export function powerOf({ re, im, count }: BandSignal): number {
  let sum = 0;
  for (let n = 0; n < count; n++) sum += (re[n] ?? 0) ** 2 + (im[n] ?? 0) ** 2;
  return sum / count;
}

/** `a` + `sign`·`b`, sample by sample. */
export const sum = (a: BandSignal, b: BandSignal, sign = 1): BandSignal => ({
  ...a,
  re: a.re.map((value, n) => value + sign * (b.re[n] ?? 0)),
  im: a.im.map((value, n) => value + sign * (b.im[n] ?? 0)),
});

export const difference = (a: BandSignal, b: BandSignal): BandSignal => sum(a, b, -1);

/** The band less the given lines. */
export function withoutDamped(band: BandSignal, lines: readonly DampedLine[]): BandSignal {
  const [re, im] = [band.re.slice(), band.im.slice()];
  for (const { amplitude, decayRate, phase, offsetHz } of lines) {
    for (let n = 0; n < band.count; n++) {
      const t = n / band.rate;
      const a = amplitude * Math.exp(-decayRate * t);
      const angle = phase + 2 * Math.PI * offsetHz * t;
      re[n] = (re[n] ?? 0) - a * Math.cos(angle);
      im[n] = (im[n] ?? 0) - a * Math.sin(angle);
    }
  }
  return { ...band, re, im };
}

/** Σ z·exp(−(decay + i·turn)·n) over `count` samples, by a pointer that turns and shrinks from one to the next. */
export function project(
  re: Float64Array,
  im: Float64Array,
  count: number,
  decay: number,
  turn: number,
): [number, number] {
  const fade = Math.exp(-decay);
  const [stepCos, stepSin] = [fade * Math.cos(turn), fade * Math.sin(turn)];
  let [cos, sin, sumRe, sumIm] = [1, 0, 0, 0];
  for (let n = 0; n < count; n++) {
    const [a, b] = [re[n] ?? 0, im[n] ?? 0];
    sumRe += a * cos + b * sin;
    sumIm += b * cos - a * sin;
    const next = cos * stepCos - sin * stepSin;
    sin = cos * stepSin + sin * stepCos;
    cos = next;
  }
  return [sumRe, sumIm];
}
