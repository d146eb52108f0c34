// One struck sound as a spectrum: from it come the audible lines and narrow bands in time.
import type { BandSignal } from './fit-damped-lines';
import { powerOfTwoAtLeast, RealFourier, SmallInverseFourier } from './fourier';

/** Sound before the onset that belongs to the segment, s. */
export const leadSeconds = 0.12;
/** Longest sound after the onset that is analysed, s. */
export const longestSeconds = 0.7;

export interface SpectralLine {
  readonly hz: number;
  /** Peak amplitude in the window, linear. */
  readonly amplitude: number;
  /** Over the noise around it, dB. */
  readonly overNoiseDb: number;
}

/** A narrow band in time, over the whole segment; sample 0 is `leadSeconds` before the onset. */
export interface Band extends BandSignal {
  readonly centreHz: number;
}

/** Spectra of struck sounds at one sample rate; all work arrays are made once. */
export class StrikeSpectrum {
  readonly #fourier: RealFourier;
  readonly #windowed: RealFourier;
  readonly #inverse = new SmallInverseFourier();
  readonly #work: Float64Array;
  readonly #magnitude: Float64Array;
  readonly #blocks: { readonly end: number; readonly noise: number }[] = [];
  readonly #sample = new Float64Array(2048);
  readonly binHz: number;

  /** For sounds of up to `seconds` after the onset. */
  constructor(
    readonly sampleRate: number,
    seconds: number = longestSeconds,
  ) {
    const size = powerOfTwoAtLeast((leadSeconds + seconds) * sampleRate * 1.3);
    this.#fourier = new RealFourier(size);
    this.#windowed = new RealFourier(size);
    this.#work = new Float64Array(size);
    this.#magnitude = new Float64Array(size / 2);
    this.binHz = sampleRate / size;
  }

  /** Takes a segment (onset at `leadSeconds`), to be asked for bands. */
  load(segment: Float32Array, count: number): void {
    const work = this.#work;
    work.fill(0);
    const edge = Math.min(Math.round(0.008 * this.sampleRate), count >> 2);
    for (let n = 0; n < count; n++) {
      const fromEnd = count - 1 - n;
      const taper =
        fromEnd < edge
          ? 0.5 - 0.5 * Math.cos((Math.PI * fromEnd) / edge)
          : n < edge
            ? 0.5 - 0.5 * Math.cos((Math.PI * n) / edge)
            : 1;
      work[n] = (segment[n] ?? 0) * taper;
    }
    this.#fourier.transform(work);
  }

  /**
   * Audible lines between `from` and `to` (samples of the segment), strongest first: local maxima of a
   * Hann-windowed spectrum that stand clear of the noise around them.
   */
  lines(segment: Float32Array, from: number, to: number, limit: number): SpectralLine[] {
    const work = this.#work;
    work.fill(0);
    const count = to - from;
    for (let n = 0; n < count; n++) {
      const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / count);
      work[n] = (segment[from + n] ?? 0) * window;
    }
    this.#windowed.transform(work);
    const spectrum = this.#windowed.spectrum;
    const magnitude = this.#magnitude;
    const scale = 4 / count;
    let highest = 0;
    const lowBin = Math.max(2, Math.floor(28 / this.binHz));
    const highBin = Math.min(magnitude.length - 2, Math.floor(6500 / this.binHz));
    for (let k = 0; k < highBin + 2; k++) {
      const size = Math.hypot(spectrum[2 * k] ?? 0, spectrum[2 * k + 1] ?? 0) * scale;
      magnitude[k] = size;
      if (k >= lowBin) highest = Math.max(highest, size);
    }
    // Half the main lobe of a Hann window is 2 / T wide.
    const lobe = Math.max(2, Math.round((2 * this.sampleRate) / count / this.binHz));
    this.#measureNoise(lobe, highBin);
    const found: SpectralLine[] = [];
    for (let k = lowBin; k < highBin; k++) {
      const here = magnitude[k] ?? 0;
      if (here < highest * 10 ** (-55 / 20)) continue;
      if (here < (magnitude[k - 1] ?? 0) || here <= (magnitude[k + 1] ?? 0)) continue;
      const noise = this.#noiseAt(k);
      const overNoiseDb = 20 * Math.log10(here / (noise + 1e-12));
      if (overNoiseDb < 11) continue;
      if (this.#isSidelobe(k, lobe, here)) continue;
      const left = Math.log(magnitude[k - 1] || 1e-30);
      const right = Math.log(magnitude[k + 1] || 1e-30);
      const middle = Math.log(here);
      const bend = left - 2 * middle + right;
      const shift = bend < 0 ? (0.5 * (left - right)) / bend : 0;
      found.push({ hz: (k + shift) * this.binHz, amplitude: here, overNoiseDb });
    }
    return found.sort((a, b) => b.amplitude - a.amplitude).slice(0, limit);
  }

  /** Median magnitude of each block of bins; blocks are wide against a line and grow with frequency. */
  #measureNoise(lobe: number, highBin: number): void {
    this.#blocks.length = 0;
    const step = Math.max(1, Math.round(lobe / 3));
    for (let start = 2; start < highBin; ) {
      const end = Math.min(highBin + 1, start + Math.max(16 * lobe, Math.round(0.15 * start)));
      const sample = this.#sample;
      let count = 0;
      for (let k = start; k < end && count < sample.length; k += step) {
        sample[count++] = this.#magnitude[k] ?? 0;
      }
      const sorted = sample.subarray(0, count).sort();
      this.#blocks.push({ end, noise: sorted[count >> 1] ?? 0 });
      start = end;
    }
  }

  #noiseAt(bin: number): number {
    return (this.#blocks.find((block) => bin < block.end) ?? { noise: 0 }).noise;
  }

  #isSidelobe(bin: number, lobe: number, here: number): boolean {
    for (let k = bin - 6 * lobe; k <= bin + 6 * lobe; k++) {
      const other = this.#magnitude[k] ?? 0;
      // Hann sidelobes fall by 18 dB an octave from −31 dB.
      const distance = Math.abs(k - bin) / lobe;
      if (distance > 1 && other * 10 ** (-(29 + 18 * Math.log2(distance)) / 20) > here) return true;
    }
    return false;
  }

  /**
   * The band of ±`halfWidthHz` around `centreHz` in time, heterodyned to its centre: flat in its inner
   * half, raised cosine outside. Twice the real signal's amplitude convention: |z| is the line's amplitude.
   */
  band(centreHz: number, halfWidthHz: number): Band {
    const centre = Math.round(centreHz / this.binHz);
    const half = Math.max(8, Math.round(halfWidthHz / this.binHz));
    const length = powerOfTwoAtLeast(2 * half + 1);
    const input = this.#inverse.inputFor(length);
    input.fill(0);
    const spectrum = this.#fourier.spectrum;
    const scale = (2 * length) / this.#fourier.size;
    for (let k = -half; k <= half; k++) {
      const bin = centre + k;
      if (bin < 1 || bin >= this.#fourier.size / 2) continue;
      const away = Math.abs(k) / half;
      const gain = (away < 0.5 ? 1 : 0.5 + 0.5 * Math.cos(2 * Math.PI * (away - 0.5))) * scale;
      const slot = 2 * ((k + length) % length);
      input[slot] = (spectrum[2 * bin] ?? 0) * gain;
      input[slot + 1] = (spectrum[2 * bin + 1] ?? 0) * gain;
    }
    const output = this.#inverse.run(length);
    const re = new Float64Array(length);
    const im = new Float64Array(length);
    for (let n = 0; n < length; n++) {
      re[n] = output[2 * n] ?? 0;
      im[n] = output[2 * n + 1] ?? 0;
    }
    return {
      re,
      im,
      count: length,
      rate: length * this.binHz,
      flatHz: (half / 2) * this.binHz,
      centreHz: centre * this.binHz,
    };
  }
}
