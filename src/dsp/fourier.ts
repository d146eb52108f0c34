// The one place that knows the FFT library: real spectra and small complex inverse transforms.
import FFT from 'fft.js';

/** Smallest power of two that is at least `count`. */
export const powerOfTwoAtLeast = (count: number): number => 2 ** Math.ceil(Math.log2(count));

/** Tables of one length, made once: they never change, and the transforms leave nothing behind in them. */
const tables = new Map<number, FFT>();

function tablesOf(length: number): FFT {
  const known = tables.get(length);
  if (known) return known;
  const made = new FFT(length);
  tables.set(length, made);
  return made;
}

/** Spectrum of a real signal of one fixed, power-of-two length; the result is reused by the next call. */
export class RealFourier {
  /** Real and imaginary parts in turn, bins 0 … size/2. */
  readonly spectrum: Float64Array;
  readonly #fft: FFT;

  constructor(readonly size: number) {
    this.#fft = tablesOf(size);
    this.spectrum = new Float64Array(2 * size);
  }

  /** Fills `spectrum` from `samples` (length `size`). */
  transform(samples: Float64Array): void {
    this.#fft.realTransform(this.spectrum, samples);
  }
}

/** Inverse transforms of a few small lengths, tables made once per length. */
export class SmallInverseFourier {
  readonly #byLength = new Map<number, { fft: FFT; input: Float64Array; output: Float64Array }>();

  /** Input array (re, im in turn) for a transform of `length`, to be filled before `run`. */
  inputFor(length: number): Float64Array {
    return this.#of(length).input;
  }

  /** Inverse transform of the filled input, scaled by 1/length; the result is reused by the next call. */
  run(length: number): Float64Array {
    const { fft, input, output } = this.#of(length);
    fft.inverseTransform(output, input);
    return output;
  }

  #of(length: number) {
    let entry = this.#byLength.get(length);
    if (!entry) {
      entry = {
        fft: tablesOf(length),
        input: new Float64Array(2 * length),
        output: new Float64Array(2 * length),
      };
      this.#byLength.set(length, entry);
    }
    return entry;
  }
}
