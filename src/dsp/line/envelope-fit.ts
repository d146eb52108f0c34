// A smooth real envelope: a falling exponential times a few slow cosines.

import { factorise, solveFactorised } from '../../domain/numbers/cholesky';
import { dot } from '../numbers/dot-product';
import { StraightLineFit } from '../numbers/straight-line';
import type { WorkArrays } from '../numbers/work-arrays';

/** By this time after the window's start a partial has bloomed, s (chosen, no source). */
const bloomSeconds = 0.05;

/**
 * Fits envelopes of one length by least squares: A(n) = exp(−fall·n)·Σⱼ wⱼ·cos(πj(n + ½)/count), j = 0 … size − 1, with
 * `fall` the decay per sample, nepers. With the columns bⱼ of this sum the weights solve the normal equations
 * (BᵀB)·w = Bᵀ·along (textbook; here from memory). BᵀB does not depend on the sound, so that its Cholesky triangle is made
 * once for a window.
 */
export class EnvelopeFit {
  /** The envelope last fitted. */
  readonly values: Float64Array;
  /** Cosine 0, 1, 2 … half turns over the window, each times the decay. */
  readonly #basis: readonly Float64Array[];
  readonly #factor: Float64Array;
  readonly #weights: Float64Array;
  /** One over the decay. */
  readonly #growth: Float64Array;

  constructor(
    readonly count: number,
    readonly size: number,
    readonly fall: number,
    work: WorkArrays,
  ) {
    this.values = work.zeros(count);
    this.#basis = Array.from({ length: size }, () => work.take(count));
    this.#factor = work.take(size * size);
    this.#weights = work.take(size);
    this.#growth = work.take(count);
    this.#fillBasis(work.take(count));
    this.#fillFactor(work.take(2 * size));
  }

  /** Each cosine from the two before it: cos(j + 1)x = 2·cos x·cos jx − cos(j − 1)x. */
  #fillBasis(twice: Float64Array): void {
    const { count, fall } = this;
    const grow = Math.exp(fall);
    let growth = 1;
    for (let n = 0; n < count; n++) {
      this.#growth[n] = growth;
      growth *= grow;
      twice[n] = 2 * Math.cos((Math.PI * (n + 0.5)) / count);
    }
    this.#basis.forEach((wave, j) => {
      const last = this.#basis[j - 1];
      const before = this.#basis[j - 2];
      for (let n = 0; n < count; n++) {
        if (j > 1) wave[n] = twice[n] * last[n] - before[n];
        else if (j === 1) wave[n] = 0.5 * twice[n] * last[n];
        else wave[n] = 1 / this.#growth[n];
      }
    });
  }

  /** Products of cosines are sums of cosines, so that the matrix holds a sum for every i + j and i − j. */
  #fillFactor(sums: Float64Array): void {
    const { count, size } = this;
    const wave = (j: number): Float64Array => this.#basis[j];
    for (let j = 0; j < 2 * size - 1; j++) {
      const half = j >> 1;
      sums[j] =
        j < size
          ? dot(wave(j), wave(0), count)
          : 2 * dot(wave(j - half), wave(half), count) - sums[j - 2 * half];
    }
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) {
        const sum = 0.5 * (sums[i + j] + sums[i - j]);
        this.#factor[i * size + j] = i === j ? sum * (1 + 1e-9) + 1e-300 : sum;
      }
    }
    factorise(this.#factor, size);
  }

  /** Fits `values` to `along` (length `count`). */
  fit(along: Float64Array): void {
    const { count, size, values } = this;
    const weights = this.#weights;
    this.#basis.forEach((wave, j) => {
      weights[j] = dot(along, wave, count);
    });
    solveFactorised(this.#factor, size, weights);
    values.fill(0, 0, count);
    this.#basis.forEach((wave, j) => {
      const weight = weights[j];
      for (let n = 0; n < count; n++) values[n] = values[n] + weight * wave[n];
    });
  }

  /**
   * Fills `swing` with the time integral (s) of the envelope's departure from a straight decay in
   * nepers, scaled to an amplitude of 1; zeros where the envelope is a straight decay.
   */
  swing(swing: Float64Array, rate: number): void {
    const { count, values } = this;
    // A late bloom is no exchange: the decay is drawn through what follows it.
    const first = Math.min(count >> 2, Math.round(bloomSeconds * rate));
    let highest = 0;
    for (let n = first; n < count; n++) {
      highest = Math.max(highest, values[n] * this.#growth[n]);
    }
    const floor = 0.1 * highest + 1e-300;
    // Straight line through the logarithm, weighted by energy.
    const straight = new StraightLineFit();
    for (let n = 0; n < count; n++) {
      const y = Math.log(Math.max(floor, values[n] * this.#growth[n]));
      swing[n] = y;
      if (n >= first) straight.add(n, y, values[n] ** 2);
    }
    const { level, slope } = straight.line();
    let square = 0;
    for (let n = 0; n < count; n++) {
      const away = swing[n] - level - slope * n;
      swing[n] = away;
      if (n >= first) square += values[n] ** 2 * away * away;
    }
    const amplitude = Math.sqrt((2 * square) / Math.max(straight.weight, 1e-300));
    let sum = 0;
    for (let n = 0; n < count; n++) {
      const part = amplitude > 0.02 ? swing[n] / amplitude : 0;
      sum += Math.max(-1.5, Math.min(1.5, part)) / rate;
      swing[n] = sum;
    }
  }
}
