// How much noise a band holds beside its line.
import { upperMedian } from '../numbers/nth-smallest';
import type { BandSignal } from './band-signal';

/** Periodogram of complex samples at multiples of 1/T between two distances from the centre, both sides, Hz. */
export function periodogram(
  { re, im, count, rate, work }: BandSignal,
  centreHz: number,
  fromHz: number,
  toHz: number,
): number[] {
  const mark = work.mark();
  const centred = centreHz === 0 ? { re, im } : turnedBack(work.take(count), work.take(count));
  const powers: number[] = [];
  const step = rate / count;
  for (let k = Math.ceil(fromHz / step); k * step <= toHz; k++) {
    pushPowers(powers, centred.re, centred.im, count, (2 * Math.PI * k) / count);
  }
  work.release(mark);
  return powers;

  /** The band with its `centreHz` at 0. */
  function turnedBack(toRe: Float64Array, toIm: Float64Array) {
    const turn = (2 * Math.PI * centreHz) / rate;
    const stepCos = Math.cos(turn);
    const stepSin = Math.sin(turn);
    let cos = 1;
    let sin = 0;
    for (let n = 0; n < count; n++) {
      const a = re[n];
      const b = im[n];
      toRe[n] = a * cos + b * sin;
      toIm[n] = b * cos - a * sin;
      const next = cos * stepCos - sin * stepSin;
      sin = cos * stepSin + sin * stepCos;
      cos = next;
    }
    return { re: toRe, im: toIm };
  }
}

/** Adds the powers at `turn` and −`turn` (radians per sample); only one at 0. */
function pushPowers(
  powers: number[],
  re: Float64Array,
  im: Float64Array,
  count: number,
  turn: number,
): void {
  const stepCos = Math.cos(turn);
  const stepSin = Math.sin(turn);
  let cos = 1;
  let sin = 0;
  let reCos = 0;
  let reSin = 0;
  let imCos = 0;
  let imSin = 0;
  for (let n = 0; n < count; n++) {
    const a = re[n];
    const b = im[n];
    reCos += a * cos;
    reSin += a * sin;
    imCos += b * cos;
    imSin += b * sin;
    const next = cos * stepCos - sin * stepSin;
    sin = cos * stepSin + sin * stepCos;
    cos = next;
  }
  powers.push(((reCos + imSin) ** 2 + (imCos - reSin) ** 2) / count);
  if (turn !== 0) powers.push(((reCos - imSin) ** 2 + (imCos + reSin) ** 2) / count);
}

/** Mean of exponentially distributed powers by their median, which a line among them does not move. */
export const meanByMedian = (powers: number[]): number =>
  Math.max(1e-18, upperMedian(powers) / Math.LN2);

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** Hann window of unit power: without it a strong beat at a line would leak into the noise beside it. */
export const hann = (n: number, count: number): number =>
  Math.sqrt(2 / 3) * (1 - Math.cos((2 * Math.PI * (n + 0.5)) / count));
