// Damped lines in a narrow band, the first of which may glide: what they leave, and the normal equations of a fit.
import type { BandSignal } from './band-signal';
import { dot } from './dot-product';

/** Parameters of a line: Re and Im of its amplitude, angular frequency (rad/s), decay rate (1/s). */
export const perLine = 4;
/** Time constant of the glide's remainder, s (most of a glide is gone 0.2 s after the strike). */
const glideSeconds = 0.06;

/**
 * z(t) = Σ a·u(t), u = exp((iω − d)·t); with a glide the first line's phase also carries c·exp(−t/0.06 s), and c is
 * the last parameter. Every derivative is a constant times u times 1, t or the glide's course, so that the normal
 * equations hold a few sums over conj(u)·u for each pair of lines.
 */
export class DampedModel {
  readonly size: number;
  /** Lower triangle, row-major. */
  readonly normal: Float64Array;
  readonly gradient: Float64Array;
  readonly #lineRe: Float64Array[] = [];
  readonly #lineIm: Float64Array[] = [];
  readonly #restRe: Float64Array;
  readonly #restIm: Float64Array;
  readonly #time: Float64Array;
  readonly #glide: Float64Array;
  readonly #in: Float64Array;
  readonly #out: Float64Array;
  readonly #weighted: Float64Array;

  constructor(
    readonly band: BandSignal,
    readonly lineCount: number,
    readonly gliding: boolean,
  ) {
    const { count, rate, work } = band;
    this.size = lineCount * perLine + (gliding ? 1 : 0);
    this.normal = work.take(this.size ** 2);
    this.gradient = work.take(this.size);
    for (let line = 0; line < lineCount; line++) {
      this.#lineRe.push(work.take(count));
      this.#lineIm.push(work.take(count));
    }
    [this.#restRe, this.#restIm] = [work.take(count), work.take(count)];
    [this.#in, this.#out, this.#weighted] = [work.take(count), work.take(count), work.take(count)];
    [this.#time, this.#glide] = [work.take(count), work.take(count)];
    const fade = Math.exp(-1 / (rate * glideSeconds));
    let fading = 1;
    for (let n = 0; n < count; n++) {
      this.#time[n] = n / rate;
      this.#glide[n] = fading;
      fading *= fade;
    }
  }

  /** Places the lines at parameters `p`; returns the energy they leave. */
  place(p: Float64Array): number {
    const { re, im, count } = this.band;
    const restRe = this.#restRe;
    const restIm = this.#restIm;
    for (let n = 0; n < count; n++) {
      restRe[n] = re[n] ?? 0;
      restIm[n] = im[n] ?? 0;
    }
    for (let line = 0; line < this.lineCount; line++) this.#takeOut(p, line);
    return dot(restRe, restRe, count) + dot(restIm, restIm, count);
  }

  #takeOut(p: Float64Array, line: number): void {
    const { count, rate } = this.band;
    const lineRe = this.#lineRe[line] ?? this.#in;
    const lineIm = this.#lineIm[line] ?? this.#out;
    const at = line * perLine;
    const shrink = Math.exp(-(p[at + 3] ?? 0) / rate);
    const turn = (p[at + 2] ?? 0) / rate;
    const stepCos = shrink * Math.cos(turn);
    const stepSin = shrink * Math.sin(turn);
    let cos = 1;
    let sin = 0;
    for (let n = 0; n < count; n++) {
      lineRe[n] = cos;
      lineIm[n] = sin;
      const next = cos * stepCos - sin * stepSin;
      sin = cos * stepSin + sin * stepCos;
      cos = next;
    }
    if (this.gliding && line === 0) this.#bend(lineRe, lineIm, p[this.size - 1] ?? 0);
    const a = p[at] ?? 0;
    const b = p[at + 1] ?? 0;
    const restRe = this.#restRe;
    const restIm = this.#restIm;
    for (let n = 0; n < count; n++) {
      const x = lineRe[n] ?? 0;
      const y = lineIm[n] ?? 0;
      restRe[n] = (restRe[n] ?? 0) - (a * x - b * y);
      restIm[n] = (restIm[n] ?? 0) - (a * y + b * x);
    }
  }

  /** Turns a line by the glide's phase. */
  #bend(lineRe: Float64Array, lineIm: Float64Array, size: number): void {
    for (let n = 0; n < this.band.count; n++) {
      const angle = size * (this.#glide[n] ?? 0);
      const cos = Math.cos(angle);
      const sin = Math.sin(angle);
      const x = lineRe[n] ?? 0;
      const y = lineIm[n] ?? 0;
      lineRe[n] = x * cos - y * sin;
      lineIm[n] = x * sin + y * cos;
    }
  }

  /** Fills `normal` and `gradient` for the parameters `p` at which the lines were last placed. */
  fillNormal(p: Float64Array): void {
    this.normal.fill(0, 0, this.size ** 2);
    for (let k = 0; k < this.lineCount; k++) {
      this.#fillGradient(p, k);
      for (let l = 0; l <= k; l++) this.#fillBlock(p, k, l);
    }
  }

  /** `#in` + i·`#out` = conj(a)·b. */
  #multiply(
    aRe: Float64Array = this.#in,
    aIm: Float64Array = this.#in,
    bRe: Float64Array = this.#in,
    bIm: Float64Array = this.#in,
  ): void {
    const along = this.#in;
    const across = this.#out;
    for (let n = 0; n < this.band.count; n++) {
      const a = aRe[n] ?? 0;
      const b = aIm[n] ?? 0;
      const c = bRe[n] ?? 0;
      const d = bIm[n] ?? 0;
      along[n] = a * c + b * d;
      across[n] = a * d - b * c;
    }
  }

  /** Derivatives by Re a, Im a: u, iu; by ω, d: i·t·a·u, −t·a·u; by the glide: i·g·a·u. */
  #fillGradient(p: Float64Array, k: number): void {
    const { count } = this.band;
    const { gradient } = this;
    this.#multiply(this.#lineRe[k], this.#lineIm[k], this.#restRe, this.#restIm);
    const at = k * perLine;
    const a = p[at] ?? 0;
    const b = p[at + 1] ?? 0;
    gradient[at] = total(this.#in, count);
    gradient[at + 1] = total(this.#out, count);
    const timeIn = dot(this.#in, this.#time, count);
    const timeOut = dot(this.#out, this.#time, count);
    gradient[at + 2] = a * timeOut - b * timeIn;
    gradient[at + 3] = -(a * timeIn + b * timeOut);
    if (!this.gliding || k > 0) return;
    const bentIn = dot(this.#in, this.#glide, count);
    const bentOut = dot(this.#out, this.#glide, count);
    gradient[this.size - 1] = a * bentOut - b * bentIn;
  }

  /** All products of derivatives by the parameters of line `k` with those of line `l` ≤ `k`. */
  #fillBlock(p: Float64Array, k: number, l: number): void {
    const { count } = this.band;
    this.#multiply(this.#lineRe[k], this.#lineIm[k], this.#lineRe[l], this.#lineIm[l]);
    const x0 = total(this.#in, count);
    const y0 = total(this.#out, count);
    const x1 = dot(this.#in, this.#time, count);
    const y1 = dot(this.#out, this.#time, count);
    const x2 = this.#squared(this.#in);
    const y2 = this.#squared(this.#out);
    const row = k * perLine;
    const column = l * perLine;
    // The constants before u (for the parameters of line k, conjugated) and the powers of t.
    const a = p[row] ?? 0;
    const b = p[row + 1] ?? 0;
    const c = p[column] ?? 0;
    const d = p[column + 1] ?? 0;
    const add = (i: number, j: number, value: number): void => {
      if (k === l && j > i) return;
      this.normal[(row + i) * this.size + column + j] = value;
    };
    add(0, 0, x0);
    add(0, 1, -y0);
    add(1, 0, y0);
    add(1, 1, x0);
    // i·c·S and c·S with S = Σ t·conj(u)·u.
    const timesRe = c * x1 - d * y1;
    const timesIm = c * y1 + d * x1;
    add(0, 2, -timesIm);
    add(0, 3, -timesRe);
    add(1, 2, timesRe);
    add(1, 3, -timesIm);
    const conjugateRe = a * x1 + b * y1;
    const conjugateIm = a * y1 - b * x1;
    add(2, 0, conjugateIm);
    add(2, 1, conjugateRe);
    add(3, 0, -conjugateRe);
    add(3, 1, conjugateIm);
    const productRe = a * c + b * d;
    const productIm = a * d - b * c;
    const bothRe = productRe * x2 - productIm * y2;
    const bothIm = productRe * y2 + productIm * x2;
    add(2, 2, bothRe);
    add(2, 3, -bothIm);
    add(3, 2, bothIm);
    add(3, 3, bothRe);
    if (this.gliding && l === 0) this.#fillGlide(p, k);
  }

  /** Σ t²·values. */
  #squared(values: Float64Array): number {
    const weighted = this.#weighted;
    const time = this.#time;
    for (let n = 0; n < this.band.count; n++) weighted[n] = (values[n] ?? 0) * (time[n] ?? 0);
    return dot(weighted, time, this.band.count);
  }

  /** Products of the glide's derivative with those of line `k`; `#in` and `#out` hold conj(u of line k)·(u of the first). */
  #fillGlide(p: Float64Array, k: number): void {
    const { count } = this.band;
    const weightedIn = this.#weighted;
    const weightedOut = this.#out;
    for (let n = 0; n < count; n++) {
      const glide = this.#glide[n] ?? 0;
      weightedIn[n] = (this.#in[n] ?? 0) * glide;
      weightedOut[n] = (this.#out[n] ?? 0) * glide;
    }
    const x0 = total(weightedIn, count);
    const y0 = total(weightedOut, count);
    const x1 = dot(weightedIn, this.#time, count);
    const y1 = dot(weightedOut, this.#time, count);
    const a = p[k * perLine] ?? 0;
    const b = p[k * perLine + 1] ?? 0;
    const c = p[0] ?? 0;
    const d = p[1] ?? 0;
    const row = (this.size - 1) * this.size;
    const at = row + k * perLine;
    // conj(constant of line k)·i·c·S, of which the real part counts.
    this.normal[at] = -(c * y0 + d * x0);
    this.normal[at + 1] = c * x0 - d * y0;
    const productRe = a * c + b * d;
    const productIm = a * d - b * c;
    this.normal[at + 2] = productRe * x1 - productIm * y1;
    this.normal[at + 3] = productRe * y1 + productIm * x1;
    if (k > 0) return;
    this.normal[row + this.size - 1] = (a * a + b * b) * dot(weightedIn, this.#glide, count);
  }
}

function total(values: Float64Array, count: number): number {
  let even = 0;
  let odd = 0;
  let n = 0;
  for (; n + 1 < count; n += 2) {
    even += values[n] ?? 0;
    odd += values[n + 1] ?? 0;
  }
  return even + odd + (n < count ? (values[n] ?? 0) : 0);
}
