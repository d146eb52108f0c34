// One struck sound as a spectrum: from it come the audible lines and narrow bands in time.

import { amplitudeOfDb, dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { powerOfTwoAtLeast, RealFourier, SmallInverseFourier } from '../numbers/fourier';
import { halveRate, halvingsOf } from '../numbers/half-rate';
import { WorkArrays } from '../numbers/work-arrays';
import type { BandSignal } from './band-signal';
import { NoiseFloor } from './noise-floor';
import { SpectralLook } from './spectral-look';
import { StrikeBuzz } from './strike-buzz';

/** Sound before the onset that belongs to the segment, s (chosen, no source, as are the limits below). */
export const leadSeconds = 0.12;
/** Longest sound after the onset that is analysed, s. */
export const longestSeconds = 0.7;

/** Lines are looked for between these frequencies, Hz. */
const lowestHz = 28;
const highestHz = 6500;
/** Lines this far below the strongest are not looked at, and lines this little over the noise, dB. */
const faintestDb = -55;
const leastOverNoiseDb = 11;
/** Both ends of a segment are faded over this time, s. */
const edgeSeconds = 0.008;

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
  readonly binHz: number;
  /** Bands are made of these, and whoever measures in them borrows more; the next `load` takes all of them back. */
  readonly work = new WorkArrays();
  readonly #fourier: RealFourier;
  readonly #windowed: RealFourier;
  readonly #inverse = new SmallInverseFourier();
  readonly #magnitude: Float64Array;
  readonly #floor = new NoiseFloor();
  readonly #buzz = new StrikeBuzz();
  /** The first moments of a strike, and what rings after them: each filled by `look`. */
  readonly early: SpectralLook;
  readonly main: SpectralLook;
  readonly late: SpectralLook;
  /** How many samples of the sound last loaded are left at the thinned rate. */
  #loaded = 0;
  /** A sound at its own rate halved not at all, once, twice … */
  readonly #halved: readonly Float64Array[];

  /** For sounds of up to `seconds` after the onset. */
  constructor(
    readonly sampleRate: number,
    seconds: number = longestSeconds,
  ) {
    const whole = powerOfTwoAtLeast((leadSeconds + seconds) * sampleRate * 1.3);
    const halvings = halvingsOf(sampleRate);
    this.#halved = Array.from(
      { length: halvings + 1 },
      (_, times) => new Float64Array(times === 0 && halvings > 0 ? 0 : whole / 2 ** times),
    );
    const size = whole / 2 ** halvings;
    this.#fourier = new RealFourier(size);
    this.#windowed = new RealFourier(size);
    this.#magnitude = new Float64Array(size / 2);
    this.binHz = sampleRate / whole;
    const bins = Math.min(size / 2, Math.ceil(highestHz / this.binHz) + 2);
    this.early = new SpectralLook(bins, this.binHz);
    this.main = new SpectralLook(bins, this.binHz);
    this.late = new SpectralLook(bins, this.binHz);
  }

  /** Takes a segment (onset at `leadSeconds`), to be asked for bands; those of the one before are no more. */
  load(segment: Float32Array, count: number): void {
    this.work.release(0);
    const { samples, length, every } = this.#thinned(segment, 0, count);
    this.#loaded = length;
    const edge = Math.min(Math.round(edgeSeconds * this.sampleRate), count >> 2);
    for (let at = 0; at < edge; at += every) {
      const last = every * Math.floor((count - 1) / every) - at;
      fade(samples, at / every, at / edge);
      fade(samples, last / every, (count - 1 - last) / edge);
    }
    this.#fourier.transform(samples);
  }

  /**
   * Audible lines between `from` and `to` (samples of the segment), strongest first: local maxima of a
   * Hann-windowed spectrum that stand clear of the noise around them.
   */
  lines(segment: Float32Array, from: number, to: number, limit: number): SpectralLine[] {
    const { samples, length, every } = this.#thinned(segment, from, to);
    const count = to - from;
    const turn = (2 * Math.PI) / count;
    const stepCos = Math.cos(turn * every);
    const stepSin = Math.sin(turn * every);
    let cos = Math.cos(0.5 * turn);
    let sin = Math.sin(0.5 * turn);
    for (let m = 0; m < length; m++) {
      samples[m] = samples[m] * (0.5 - 0.5 * cos);
      const next = cos * stepCos - sin * stepSin;
      sin = cos * stepSin + sin * stepCos;
      cos = next;
    }
    this.#windowed.transform(samples);
    const magnitude = this.#magnitude;
    const lowBin = Math.max(2, Math.floor(lowestHz / this.binHz));
    const highBin = Math.min(magnitude.length - 2, Math.floor(highestHz / this.binHz));
    const highest = this.#fillMagnitude((4 * every) / count, lowBin, highBin);
    // Half the main lobe of a Hann window is 2 / T wide.
    const lobe = Math.max(2, Math.round((2 * this.sampleRate) / count / this.binHz));
    this.#floor.measure(magnitude, lobe, highBin);
    const faintest = highest * amplitudeOfDb(faintestDb);
    const found: SpectralLine[] = [];
    for (let k = lowBin; k < highBin; k++) {
      const here = magnitude[k];
      if (here < faintest) continue;
      if (here < magnitude[k - 1] || here <= magnitude[k + 1]) continue;
      const overNoiseDb = dbOfAmplitude(here / (this.#floor.at(k) + 1e-12), 1e-12);
      if (overNoiseDb < leastOverNoiseDb || this.#floor.isSidelobe(magnitude, k)) continue;
      const hz = (k + this.#shiftAt(k)) * this.binHz;
      found.push({ hz, amplitude: here, overNoiseDb });
    }
    return found.sort((a, b) => b.amplitude - a.amplitude).slice(0, limit);
  }

  /** The same lines, kept in `into` together with the spectrum they were found in. */
  look(
    into: SpectralLook,
    segment: Float32Array,
    from: number,
    to: number,
    limit: number,
  ): SpectralLook {
    const lines = this.lines(segment, from, to, limit);
    into.take(this.#magnitude, lines);
    return into;
  }

  /** The sound last loaded at the rate that keeps its lines; sample 0 is `leadSeconds` before the onset. */
  get thinned(): { readonly samples: Float64Array; readonly count: number; readonly rate: number } {
    return {
      samples: this.#halved[this.#halved.length - 1],
      count: this.#loaded,
      rate: this.sampleRate / 2 ** (this.#halved.length - 1),
    };
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
      input[slot] = spectrum[2 * bin] * gain;
      input[slot + 1] = spectrum[2 * bin + 1] * gain;
    }
    const output = this.#inverse.run(length);
    const re = this.work.take(length);
    const im = this.work.take(length);
    for (let n = 0; n < length; n++) {
      re[n] = output[2 * n];
      im[n] = output[2 * n + 1];
    }
    return {
      re,
      im,
      count: length,
      rate: length * this.binHz,
      flatHz: (half / 2) * this.binHz,
      work: this.work,
      centreHz: centre * this.binHz,
    };
  }

  /** How much of the sound last loaded is a buzz beside `lines` (see `StrikeBuzz`), dB; null if it is too short. */
  buzzDb(lines: readonly Pick<SpectralLine, 'hz'>[]): number | null {
    const samples = this.#halved[this.#halved.length - 1];
    const rate = this.sampleRate / 2 ** (this.#halved.length - 1);
    const onset = Math.round(leadSeconds * rate);
    return this.#buzz.measure({ samples, count: this.#loaded, onset, rate }, lines);
  }

  /** `segment[from…to)` at the lowest rate that keeps its lines, zeros behind; every how many samples one is left. */
  #thinned(segment: Float32Array, from: number, to: number) {
    let samples = this.#halved[0];
    let length = Math.max(0, to - from);
    if (this.#halved.length === 1) {
      for (let n = 0; n < length; n++) samples[n] = segment[from + n];
    }
    for (let times = 1; times < this.#halved.length; times++) {
      const next = this.#halved[times];
      length =
        times === 1 ? halveRate(segment, from, to, next) : halveRate(samples, 0, length, next);
      samples = next;
    }
    samples.fill(0, length);
    return { samples, length, every: 2 ** (this.#halved.length - 1) };
  }

  /** Magnitudes of the windowed spectrum from its start to just above `highBin`; returns the largest from `lowBin` on. */
  #fillMagnitude(scale: number, lowBin: number, highBin: number): number {
    const spectrum = this.#windowed.spectrum;
    const magnitude = this.#magnitude;
    let highest = 0;
    for (let k = 0; k < highBin + 2; k++) {
      const re = spectrum[2 * k];
      const im = spectrum[2 * k + 1];
      const size = Math.sqrt(re * re + im * im) * scale;
      magnitude[k] = size;
      if (k >= lowBin && size > highest) highest = size;
    }
    return highest;
  }

  /** How far the top of a peak lies beside its bin: a parabola through the logarithms of three magnitudes. */
  #shiftAt(bin: number): number {
    const [left = 0, middle = 0, right = 0] = [-1, 0, 1].map((away) =>
      Math.log(this.#magnitude[bin + away] || 1e-30),
    );
    const bend = left - 2 * middle + right;
    return bend < 0 ? (0.5 * (left - right)) / bend : 0;
  }
}

/** Scales the sample at `at` by a raised cosine that goes from 0 at `part` 0 to 1 at 1. */
function fade(samples: Float64Array, at: number, part: number): void {
  if (part < 1) samples[at] = samples[at] * (0.5 - 0.5 * Math.cos(Math.PI * part));
}
