// The slow waves that a wavering is put together from, and their integrals.
import type { WorkArrays } from '../numbers/work-arrays';

export class WaveringWaves {
  /** Cosines by half turns over the window, from 0 to twice the highest: products of two cosines are two cosines. */
  readonly #cosines: readonly Float64Array[];
  /** Time integrals of cosine 1, 2 …, s. */
  readonly #sines: readonly Float64Array[];

  /** `highest`: half turns over the window of the fastest wave. */
  constructor(count: number, rate: number, highest: number, work: WorkArrays) {
    const turn = Math.PI / count;
    this.#cosines = Array.from({ length: 2 * highest + 1 }, () => work.take(count));
    this.#sines = Array.from({ length: highest }, () => work.take(count));
    const twice = work.take(count);
    for (let n = 0; n < count; n++) twice[n] = 2 * Math.cos(turn * (n + 0.5));
    const still = work.take(count).fill(0, 0, count);
    this.#cosine0().fill(1, 0, count);
    this.#cosines.forEach((wave, j) => {
      // A cosine is even: the one before the first is the one after it.
      if (j === 1) halve(twice, wave, count);
      else if (j > 1) follow(wave, this.cosine(j - 1), this.cosine(j - 2), twice, count);
    });
    this.#sines.forEach((wave, k) => {
      if (k > 0) follow(wave, this.sine(k), k > 1 ? this.sine(k - 1) : still, twice, count);
      else for (let n = 0; n < count; n++) wave[n] = Math.sin(turn * (n + 0.5));
    });
    this.#sines.forEach((wave, k) => {
      const scale = 1 / (turn * (k + 1) * rate);
      for (let n = 0; n < count; n++) wave[n] = scale * (wave[n] ?? 0);
    });
  }

  get count(): number {
    return this.#cosines.length;
  }

  /** Cosine of `j` half turns over the window. */
  cosine(j: number): Float64Array {
    return this.#cosines[j] ?? this.#cosine0();
  }

  /** Time integral of cosine `j` (from 1), s. */
  sine(j: number): Float64Array {
    return this.#sines[j - 1] ?? this.#cosine0();
  }

  #cosine0(): Float64Array {
    const [first] = this.#cosines;
    if (!first) throw new RangeError('a wavering has at least one wave');
    return first;
  }
}

function halve(values: Float64Array, halved: Float64Array, count: number): void {
  for (let n = 0; n < count; n++) halved[n] = 0.5 * (values[n] ?? 0);
}

/** A wave from the two before it: f(j + 1)x = 2·cos x·f(jx) − f(j − 1)x, for sines and cosines alike. */
function follow(
  wave: Float64Array,
  last: Float64Array,
  before: Float64Array,
  twice: Float64Array,
  count: number,
): void {
  for (let n = 0; n < count; n++) wave[n] = (twice[n] ?? 0) * (last[n] ?? 0) - (before[n] ?? 0);
}
