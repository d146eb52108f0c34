// How much noise a band holds beside its line.
import { project } from './band-sums';
import type { BandSignal } from './fit-damped-lines';

/** Periodogram of complex samples at multiples of 1/T between two distances from the centre, both sides, Hz. */
export function periodogram(
  { re, im, count, rate }: BandSignal,
  centreHz: number,
  fromHz: number,
  toHz: number,
): number[] {
  const powers: number[] = [];
  const step = rate / count;
  for (let k = Math.ceil(fromHz / step); k * step <= toHz; k++) {
    for (const side of k === 0 ? [1] : [1, -1]) {
      powers.push(powerAt(re, im, count, (2 * Math.PI * (centreHz + side * k * step)) / rate));
    }
  }
  return powers;
}

function powerAt(re: Float64Array, im: Float64Array, count: number, turn: number): number {
  const [sumRe, sumIm] = project(re, im, count, 0, turn);
  return (sumRe * sumRe + sumIm * sumIm) / count;
}

/** Mean of exponentially distributed powers by their median, which a line among them does not move. */
export function meanByMedian(powers: number[]): number {
  powers.sort((a, b) => a - b);
  return Math.max(1e-18, (powers[powers.length >> 1] ?? 0) / Math.LN2);
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
