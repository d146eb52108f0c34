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
  /** Real and imaginary parts in turn, bins 0 … size/2 − 1. */
  readonly spectrum: Float64Array;
  readonly #fft: FFT;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;

  constructor(readonly size: number) {
    this.#fft = tablesOf(size / 2);
    this.spectrum = new Float64Array(size);
    const turn = (2 * Math.PI) / size;
    this.#cos = Float64Array.from({ length: size / 4 + 1 }, (_, k) => Math.cos(turn * k));
    this.#sin = Float64Array.from({ length: size / 4 + 1 }, (_, k) => Math.sin(turn * k));
  }

  /**
   * Fills `spectrum` from `samples` (length `size`): even and odd samples are taken for the two parts of one complex
   * signal of half the length, whose spectrum is then parted again (Press et al., Numerical Recipes, ch. 12.3).
   */
  transform(samples: Float64Array): void {
    const { spectrum } = this;
    this.#fft.transform(spectrum, samples);
    const half = this.size / 2;
    spectrum[0] = spectrum[0] + spectrum[1];
    spectrum[1] = 0;
    for (let k = 1; k <= half / 2; k++) {
      const low = 2 * k;
      const high = 2 * (half - k);
      const lowRe = spectrum[low];
      const lowIm = spectrum[low + 1];
      const highRe = spectrum[high];
      const highIm = spectrum[high + 1];
      const evenRe = 0.5 * (lowRe + highRe);
      const evenIm = 0.5 * (lowIm - highIm);
      const oddRe = 0.5 * (lowIm + highIm);
      const oddIm = 0.5 * (highRe - lowRe);
      const cos = this.#cos[k];
      const sin = this.#sin[k];
      const turnedRe = oddRe * cos + oddIm * sin;
      const turnedIm = oddIm * cos - oddRe * sin;
      spectrum[low] = evenRe + turnedRe;
      spectrum[low + 1] = evenIm + turnedIm;
      spectrum[high] = evenRe - turnedRe;
      spectrum[high + 1] = turnedIm - evenIm;
    }
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
