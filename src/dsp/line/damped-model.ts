// Damped lines in a narrow band, the first of which may glide: what they leave, and the normal equations of a fit.

import { dot } from '../numbers/dot-product';
import type { BandSignal } from '../spectrum/band-signal';
import {
  type ComplexSamples,
  fillGlideMoments,
  fillMoments,
  momentCount,
  moments,
} from './line-moments';

/** Parameters of a line: Re and Im of its amplitude, angular frequency (rad/s), decay rate (1/s). */
export const perLine = 4;
/** Time constant of the glide's remainder, s (most of a glide is gone 0.2 s after the strike). */
const glideSeconds = 0.06;

/**
 * z(t) = Σ a·u(t), u = exp((iω − d)·t); with a glide the first line's phase also carries c·exp(−t/0.06 s), and c is
 * the last parameter. The derivatives are u and iu (by a), i·t·a·u (by ω), −t·a·u (by d) and i·g·a·u (by c), so that
 * the normal equations hold a few sums over conj(u)·u for each pair of lines.
 */
export class DampedModel {
  readonly size: number;
  /** Lower triangle, row-major. */
  readonly normal: Float64Array;
  readonly gradient: Float64Array;
  readonly #lines: readonly ComplexSamples[];
  readonly #rest: ComplexSamples;
  readonly #glide: Float64Array;
  readonly #sums: Float64Array;

  constructor(
    readonly band: BandSignal,
    readonly lineCount: number,
    readonly gliding: boolean,
  ) {
    const { count, rate, work } = band;
    this.size = lineCount * perLine + (gliding ? 1 : 0);
    this.normal = work.take(this.size ** 2);
    this.gradient = work.take(this.size);
    this.#sums = work.take(momentCount);
    const samples = (): ComplexSamples => ({ re: work.take(count), im: work.take(count) });
    this.#lines = Array.from({ length: lineCount }, samples);
    this.#rest = samples();
    this.#glide = work.take(count);
    const fade = Math.exp(-1 / (rate * glideSeconds));
    let fading = 1;
    for (let n = 0; n < count; n++) {
      this.#glide[n] = fading;
      fading *= fade;
    }
  }

  /** Places the lines at parameters `p`; returns the energy they leave. */
  place(p: Float64Array): number {
    const { count, rate } = this.band;
    const { re, im } = this.#rest;
    copy(this.band.re, re, count);
    copy(this.band.im, im, count);
    for (let k = 0; k < this.lineCount; k++) {
      const line = this.#lines[k];
      const at = k * perLine;
      turnAndShrink(line, p[at + 2] / rate, p[at + 3] / rate, count);
      if (this.gliding && k === 0) bend(line, this.#glide, p[this.size - 1], count);
      takeOut(this.#rest, line, p[at], p[at + 1], count);
    }
    return dot(re, re, count) + dot(im, im, count);
  }

  /** Fills `normal` and `gradient` for the parameters `p` at which the lines were last placed. */
  fillNormal(p: Float64Array): void {
    this.normal.fill(0, 0, this.size ** 2);
    for (let k = 0; k < this.lineCount; k++) {
      this.#fillGradient(p, k);
      for (let l = 0; l <= k; l++) this.#fillBlock(p, k, l);
      if (this.gliding) this.#fillGlide(p, k);
    }
  }

  #fillGradient(p: Float64Array, k: number): void {
    const { count, rate } = this.band;
    const gradient = this.gradient;
    const sums = this.#sums;
    fillMoments(sums, this.#lines[k], this.#rest, count, 1 / rate);
    const at = k * perLine;
    const a = p[at];
    const b = p[at + 1];
    const timeRe = sums[moments.timeRe];
    const timeIm = sums[moments.timeIm];
    gradient[at] = sums[moments.re];
    gradient[at + 1] = sums[moments.im];
    gradient[at + 2] = a * timeIm - b * timeRe;
    gradient[at + 3] = -(a * timeRe + b * timeIm);
    if (!this.gliding || k > 0) return;
    fillGlideMoments(sums, this.#lines[k], this.#rest, this.#glide, count, 1 / rate);
    const bent = a * sums[moments.glideIm] - b * sums[moments.glideRe];
    gradient[this.size - 1] = bent;
  }

  /** All products of derivatives by the parameters of line `k` with those of line `l` ≤ `k`. */
  #fillBlock(p: Float64Array, k: number, l: number): void {
    const { count, rate } = this.band;
    const { normal, size } = this;
    const sums = this.#sums;
    fillMoments(sums, this.#lines[k], this.#lines[l], count, 1 / rate);
    const re = sums[moments.re];
    const im = sums[moments.im];
    const timeRe = sums[moments.timeRe];
    const timeIm = sums[moments.timeIm];
    const squareRe = sums[moments.squareRe];
    const squareIm = sums[moments.squareIm];
    const column = l * perLine;
    const a = p[k * perLine];
    const b = p[k * perLine + 1];
    const c = p[column];
    const d = p[column + 1];
    // What stands before u: conjugated for the parameters of line k, plain for those of line l.
    const laterRe = c * timeRe - d * timeIm;
    const laterIm = c * timeIm + d * timeRe;
    const earlierRe = a * timeRe + b * timeIm;
    const earlierIm = a * timeIm - b * timeRe;
    const productRe = a * c + b * d;
    const productIm = a * d - b * c;
    const bothRe = productRe * squareRe - productIm * squareIm;
    const bothIm = productRe * squareIm + productIm * squareRe;
    let row = k * perLine * size + column;
    fillRow(normal, row, re, -im, -laterIm, -laterRe);
    row += size;
    fillRow(normal, row, im, re, laterRe, -laterIm);
    row += size;
    fillRow(normal, row, earlierIm, earlierRe, bothRe, -bothIm);
    row += size;
    fillRow(normal, row, -earlierRe, earlierIm, bothIm, bothRe);
  }

  /** Products of the glide's derivative with those of line `k`. */
  #fillGlide(p: Float64Array, k: number): void {
    const { count, rate } = this.band;
    const sums = this.#sums;
    fillGlideMoments(sums, this.#lines[k], this.#lines[0], this.#glide, count, 1 / rate);
    const re = sums[moments.glideRe];
    const im = sums[moments.glideIm];
    const timeRe = sums[moments.glideTimeRe];
    const timeIm = sums[moments.glideTimeIm];
    const a = p[k * perLine];
    const b = p[k * perLine + 1];
    const c = p[0];
    const d = p[1];
    const productRe = a * c + b * d;
    const productIm = a * d - b * c;
    const row = (this.size - 1) * this.size;
    fillRow(
      this.normal,
      row + k * perLine,
      -(c * im + d * re),
      c * re - d * im,
      productRe * timeRe - productIm * timeIm,
      productRe * timeIm + productIm * timeRe,
    );
    if (k > 0) return;
    this.normal[row + this.size - 1] = (a * a + b * b) * sums[moments.glideSquare];
  }
}

/** Four neighbours in a row; those above the diagonal are never read. */
function fillRow(
  matrix: Float64Array,
  at: number,
  first: number,
  second: number,
  third: number,
  fourth: number,
): void {
  matrix[at] = first;
  matrix[at + 1] = second;
  matrix[at + 2] = third;
  matrix[at + 3] = fourth;
}

function copy(from: Float64Array, to: Float64Array, count: number): void {
  for (let n = 0; n < count; n++) to[n] = from[n];
}

/** Fills `line` with exp((i·turn − decay)·n). */
function turnAndShrink(
  { re, im }: ComplexSamples,
  turn: number,
  decay: number,
  count: number,
): void {
  const shrink = Math.exp(-decay);
  const stepCos = shrink * Math.cos(turn);
  const stepSin = shrink * Math.sin(turn);
  let cos = 1;
  let sin = 0;
  for (let n = 0; n < count; n++) {
    re[n] = cos;
    im[n] = sin;
    const next = cos * stepCos - sin * stepSin;
    sin = cos * stepSin + sin * stepCos;
    cos = next;
  }
}

/** Turns a line by the phase `size`·glide. */
function bend({ re, im }: ComplexSamples, glide: Float64Array, size: number, count: number): void {
  for (let n = 0; n < count; n++) {
    const angle = size * glide[n];
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const x = re[n];
    const y = im[n];
    re[n] = x * cos - y * sin;
    im[n] = x * sin + y * cos;
  }
}

/** `rest` less (a + i·b)·`line`. */
function takeOut(
  { re, im }: ComplexSamples,
  line: ComplexSamples,
  a: number,
  b: number,
  count: number,
): void {
  for (let n = 0; n < count; n++) {
    const x = line.re[n];
    const y = line.im[n];
    re[n] = re[n] - (a * x - b * y);
    im[n] = im[n] - (a * y + b * x);
  }
}
