// Normal equations of wavering lines, built from the products of whole lines instead of single columns.
import { dot } from '../numbers/dot-product';
import {
  decay,
  fixedCount,
  glide,
  level,
  omega,
  phi,
  swing,
  tauIndex,
  type WaveringModel,
} from './wavering-model';

/** A line's slow functions: those of its fixed parameters and, last, of the glides' time constant. */
const slowCount = fixedCount + 1;
const isReal = (i: number): boolean => i === level || i === decay;

/**
 * Gauss–Newton matrix and gradient. Every derivative is its line times a slow function that is real (level, decay,
 * cosines) or imaginary (phase, frequency, glide, swing), so that the matrix holds sums over conj(line)·line
 * times two slow functions; products of cosines are cosines. The small swing of a cosine's own phase is in the
 * gradient but not in the matrix.
 */
export class WaveringNormal {
  /** Lower triangle, row-major, without the priors. */
  readonly matrix: Float64Array;
  readonly gradient: Float64Array;
  readonly #slow: readonly (readonly Float64Array[])[];
  readonly #in: Float64Array;
  readonly #out: Float64Array;
  readonly #work: Float64Array;
  readonly #cosine: Float64Array;

  constructor(readonly model: WaveringModel) {
    const { size, count, lineCount, work } = model;
    this.matrix = work.take(size * size);
    this.gradient = work.take(size);
    this.#slow = Array.from({ length: lineCount }, () =>
      Array.from({ length: slowCount }, () => work.take(count)),
    );
    this.#in = work.take(count);
    this.#out = work.take(count);
    this.#work = work.take(count);
    this.#cosine = work.take(model.waves.count);
  }

  /** Fills both, scaled by `scale`, for the parameters with which the model was last filled. */
  fill(p: Float64Array, restRe: Float64Array, restIm: Float64Array, scale: number): void {
    this.matrix.fill(0, 0, this.model.size ** 2);
    this.gradient.fill(0, 0, this.model.size);
    for (let k = 0; k < this.model.lineCount; k++) {
      this.#fillSlow(p, k);
      this.#fillGradient(p, k, restRe, restIm, scale);
      for (let l = 0; l <= k; l++) this.#fillBlock(k, l, scale);
    }
  }

  #fillSlow(p: Float64Array, k: number): void {
    const { count, rate, after } = this.model;
    const slow = this.#slow[k] ?? [];
    const at = this.model.lineStart(k);
    const tau = Math.exp(p[tauIndex] ?? 0);
    const fade = Math.exp(-1 / (rate * tau));
    let fading = Math.exp(-after / tau);
    const g = p[at + glide] ?? 0;
    const target = (i: number): Float64Array => slow[i] ?? this.#work;
    target(level).fill(1, 0, count);
    target(phi).fill(1, 0, count);
    const bySwing = target(swing);
    const swung = this.model.swings[k] ?? this.#work;
    for (let n = 0; n < count; n++) bySwing[n] = swung[n] ?? 0;
    const [byDecay, byOmega, byGlide, byTau] = [decay, omega, glide, fixedCount].map(target);
    for (let n = 0; n < count; n++) {
      const t = n / rate;
      if (byDecay) byDecay[n] = -t;
      if (byOmega) byOmega[n] = t;
      if (byGlide) byGlide[n] = -tau * fading;
      if (byTau) byTau[n] = -g * (tau + after + t) * fading;
      fading *= fade;
    }
  }

  #index(k: number, slow: number): number {
    return slow === fixedCount ? tauIndex : this.model.lineStart(k) + slow;
  }

  #fillGradient(
    p: Float64Array,
    k: number,
    restRe: Float64Array,
    restIm: Float64Array,
    scale: number,
  ): void {
    const { count, perLine, waves } = this.model;
    this.#multiply(this.model.lineRe[k], this.model.lineIm[k], restRe, restIm);
    const along = this.#in;
    const across = this.#out;
    const gradient = this.gradient;
    (this.#slow[k] ?? []).forEach((slow, i) => {
      const at = this.#index(k, i);
      gradient[at] = (gradient[at] ?? 0) + scale * dot(isReal(i) ? along : across, slow, count);
    });
    const start = this.model.lineStart(k) + fixedCount;
    const kappa = p[this.model.lineStart(k) + swing] ?? 0;
    for (let j = 1; j <= perLine - fixedCount; j++) {
      const own = dot(along, waves.cosine(j), count);
      gradient[start + j - 1] = scale * (own + kappa * dot(across, waves.sine(j), count));
    }
  }

  /** `#in` + i·`#out` = conj(a)·b. */
  #multiply(
    aRe: Float64Array = this.#work,
    aIm: Float64Array = this.#work,
    bRe: Float64Array = this.#work,
    bIm: Float64Array = this.#work,
  ): void {
    const along = this.#in;
    const across = this.#out;
    for (let n = 0; n < this.model.count; n++) {
      const a = aRe[n] ?? 0;
      const b = aIm[n] ?? 0;
      const c = bRe[n] ?? 0;
      const d = bIm[n] ?? 0;
      along[n] = a * c + b * d;
      across[n] = a * d - b * c;
    }
  }

  /** All sums between the parameters of line `k` and those of line `l` ≤ `k`. */
  #fillBlock(k: number, l: number, scale: number): void {
    const { lineRe, lineIm } = this.model;
    this.#multiply(lineRe[k], lineIm[k], lineRe[l], lineIm[l]);
    for (let i = 0; i < slowCount; i++) {
      this.#couple(k, i, l, true, scale);
      if (k !== l) this.#couple(l, i, k, true, scale);
      this.#couple(k, i, l, false, scale);
    }
    this.#fillCosines(k, l, scale);
  }

  /**
   * Slow function `i` of line `k` with the real functions (cosines among them) of line `l`, or with its imaginary
   * ones. Slow functions among each other are only summed for the line with the higher number.
   */
  #couple(k: number, i: number, l: number, real: boolean, scale: number): void {
    const alike = isReal(i) === real;
    if (k === l && !alike) return;
    const { count, waves, perLine } = this.model;
    // Re(conj(a·f)·b·g) of real and imaginary f, g: the part across changes its sign with the order of the lines.
    const sign = alike ? 1 : real === k > l ? 1 : -1;
    const weight = alike ? this.#in : this.#out;
    const slow = this.#slow[k]?.[i] ?? this.#work;
    const work = this.#work;
    for (let n = 0; n < count; n++) work[n] = sign * scale * (weight[n] ?? 0) * (slow[n] ?? 0);
    const row = this.#index(k, i);
    for (let j = 0; j < slowCount && k >= l; j++) {
      if (isReal(j) !== real || (k === l && j > i)) continue;
      const value = dot(work, this.#slow[l]?.[j] ?? work, count);
      // The common time constant meets itself once in each order.
      const twice = k !== l && i === fixedCount && j === fixedCount ? 2 : 1;
      this.#add(row, this.#index(l, j), twice * value);
    }
    const start = this.model.lineStart(l) + fixedCount;
    for (let j = 0; real && j < perLine - fixedCount; j++) {
      this.#add(row, start + j, dot(work, waves.cosine(j + 1), count));
    }
  }

  #fillCosines(k: number, l: number, scale: number): void {
    const { count, waves, perLine, size } = this.model;
    const sums = this.#cosine;
    for (let j = 0; j < waves.count; j++) {
      sums[j] = 0.5 * scale * dot(this.#in, waves.cosine(j), count);
    }
    const highest = perLine - fixedCount;
    const startK = this.model.lineStart(k) + fixedCount - 1;
    const startL = this.model.lineStart(l) + fixedCount - 1;
    for (let i = 1; i <= highest; i++) {
      for (let j = 1; j <= (k === l ? i : highest); j++) {
        this.matrix[(startK + i) * size + startL + j] =
          (sums[i + j] ?? 0) + (sums[Math.abs(i - j)] ?? 0);
      }
    }
  }

  #add(row: number, column: number, value: number): void {
    const at = Math.max(row, column) * this.model.size + Math.min(row, column);
    this.matrix[at] = (this.matrix[at] ?? 0) + value;
  }
}
