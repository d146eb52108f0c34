// A smooth real envelope: a falling exponential times a few slow cosines.
import { factorise, solveFactorised } from './solve-symmetric';

/** A partial has bloomed by then, s after the window's start. */
const bloomSeconds = 0.05;

/** Fits envelopes of one length by least squares; `fall` is the decay per sample, `size` the number of cosines. */
export class EnvelopeFit {
  /** The envelope last fitted. */
  readonly values: Float64Array;
  readonly #basis: Float64Array;
  readonly #factor: Float64Array;
  readonly #weights: Float64Array;

  constructor(
    readonly count: number,
    readonly size: number,
    readonly fall: number,
  ) {
    this.values = new Float64Array(count);
    this.#basis = new Float64Array(count * size);
    this.#factor = new Float64Array(size * size);
    this.#weights = new Float64Array(size);
    for (let n = 0; n < count; n++) {
      const decay = Math.exp(-fall * n);
      for (let j = 0; j < size; j++) {
        this.#basis[n * size + j] = decay * Math.cos((Math.PI * j * (n + 0.5)) / count);
      }
    }
    for (let n = 0; n < count; n++) {
      for (let i = 0; i < size; i++) {
        const value = this.#basis[n * size + i] ?? 0;
        for (let j = 0; j <= i; j++) {
          const at = i * size + j;
          this.#factor[at] = (this.#factor[at] ?? 0) + value * (this.#basis[n * size + j] ?? 0);
        }
      }
    }
    for (let i = 0; i < size; i++) {
      const at = i * size + i;
      this.#factor[at] = (this.#factor[at] ?? 0) * (1 + 1e-9) + 1e-300;
    }
    factorise(this.#factor, size);
  }

  /** Fits `values` to `along` (length `count`). */
  fit(along: Float64Array): void {
    const { count, size } = this;
    const weights = this.#weights;
    weights.fill(0);
    for (let n = 0; n < count; n++) {
      const value = along[n] ?? 0;
      for (let j = 0; j < size; j++) {
        weights[j] = (weights[j] ?? 0) + value * (this.#basis[n * size + j] ?? 0);
      }
    }
    solveFactorised(this.#factor, size, weights);
    for (let n = 0; n < count; n++) {
      let sum = 0;
      for (let j = 0; j < size; j++) {
        sum += (weights[j] ?? 0) * (this.#basis[n * size + j] ?? 0);
      }
      this.values[n] = sum;
    }
  }

  /**
   * Fills `swing` with the time integral (s) of the envelope's departure from a straight decay in
   * nepers, scaled to an amplitude of 1; zeros where the envelope is a straight decay.
   */
  swing(swing: Float64Array, rate: number): void {
    const { count, fall, values } = this;
    // A late bloom is no exchange: the decay is drawn through what follows it.
    const first = Math.min(count >> 2, Math.round(bloomSeconds * rate));
    let highest = 0;
    for (let n = first; n < count; n++) {
      highest = Math.max(highest, (values[n] ?? 0) * Math.exp(fall * n));
    }
    const floor = 0.1 * highest + 1e-300;
    // Straight line through the logarithm, weighted by energy.
    let [w, wt, wtt, wy, wty] = [0, 0, 0, 0, 0];
    for (let n = 0; n < count; n++) {
      const y = Math.log(Math.max(floor, (values[n] ?? 0) * Math.exp(fall * n)));
      swing[n] = y;
      if (n < first) continue;
      const weight = (values[n] ?? 0) ** 2;
      w += weight;
      wt += weight * n;
      wtt += weight * n * n;
      wy += weight * y;
      wty += weight * n * y;
    }
    const determinant = w * wtt - wt * wt;
    const slope = determinant > 0 ? (w * wty - wt * wy) / determinant : 0;
    const level = w > 0 ? (wy - slope * wt) / w : 0;
    let square = 0;
    for (let n = 0; n < count; n++) {
      const away = (swing[n] ?? 0) - level - slope * n;
      swing[n] = away;
      if (n >= first) square += (values[n] ?? 0) ** 2 * away * away;
    }
    const amplitude = Math.sqrt((2 * square) / Math.max(w, 1e-300));
    for (let n = 0; n < count; n++) {
      swing[n] = amplitude > 0.02 ? Math.max(-1.5, Math.min(1.5, (swing[n] ?? 0) / amplitude)) : 0;
    }
    let sum = 0;
    for (let n = 0; n < count; n++) {
      sum += (swing[n] ?? 0) / rate;
      swing[n] = sum;
    }
  }
}
