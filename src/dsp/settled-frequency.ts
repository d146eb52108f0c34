// The settled frequency of one decaying line from its phase: the amplitude may do what it likes.
import { meanByMedian, periodogram } from './band-noise';
import { EnvelopeFit } from './envelope-fit';
import type { BandSignal } from './fit-damped-lines';
import { glideIndex, PhaseModel, settledIndex } from './phase-model';
import { factorise, solveFactorised } from './solve-symmetric';

/** Where the search begins: a line as the joint fit of its band left it. */
export interface RoughLine {
  /** Offset from the band's centre, Hz. */
  readonly offsetHz: number;
  /** Amplitude decay rate, 1/s. */
  readonly decayRate: number;
  /** Phase at the first sample without its glide, radians. */
  readonly phase: number;
  /** Phase of the glide at the first sample, radians. */
  readonly glide: number;
}

export interface SettledFrequency {
  /** Offset from the band's centre, Hz. */
  readonly offsetHz: number;
  /** One standard error, Hz. */
  readonly sigmaHz: number;
  /** Frequency at the strike above the settled one, Hz; negative where the line glides up. */
  readonly glideHz: number;
  /** Energy across the line that neither its envelope nor its phase explains, as a part of its energy. */
  readonly across: number;
  /** The same as a multiple of the noise beside the line: 1 if nothing else is there. */
  readonly misfit: number;
  /** The line itself over the window, to be taken out of the band. */
  readonly model: { readonly re: Float64Array; readonly im: Float64Array };
}

/** Glides of these time constants are the starting points, s. */
const glideStarts = [0.045, 0.09, 0.022];
/** The envelope is free to move this fast, Hz. */
export const envelopeHz = 16;
/** The noise is measured between these distances from the line, Hz. */
const noiseFromHz = 18;
const noiseToHz = 38;
const stepLimit = 12;
/** A descent that explains the band down to this much more than its noise needs no other starting point. */
const goodEnough = 1.2;
/** Part of a line's own amplitude by which it may stray across itself without meaning anything. */
const strayPart = 0.04;

/**
 * Fits z(t) = A(t)·exp(iθ(t)) with a free real envelope A and the phase of `PhaseModel` to a band in
 * which only this line is left. `after`: time of the first sample after the strike, s; `centreHz`: the
 * band's centre. Levenberg–Marquardt on the part of z across the line; the standard error comes from the
 * noise measured beside the line and holds the doubt about glide and swing. A free A costs no certainty,
 * because amplitude and phase of a line are independent (Kay, Fundamentals of Statistical Signal
 * Processing I, 1993, ch. 3.11).
 */
export function settledFrequency(
  band: BandSignal,
  rough: RoughLine,
  after: number,
  centreHz: number,
): SettledFrequency | null {
  if (band.count < 16) return null;
  return new PhaseFit(band, rough, after, centreHz + rough.offsetHz).run();
}

interface Descent {
  readonly parameters: Float64Array;
  readonly cost: number;
}

class PhaseFit {
  readonly #model: PhaseModel;
  readonly #envelope: EnvelopeFit;
  readonly #along: Float64Array;
  readonly #across: Float64Array;
  readonly #angles: Float64Array;
  readonly #trust: Float64Array;
  readonly #slopes: Float64Array;
  readonly #normal: Float64Array;
  readonly #factor: Float64Array;
  readonly #right: Float64Array;
  #noise = 0;

  constructor(
    readonly band: BandSignal,
    readonly rough: RoughLine,
    after: number,
    hz: number,
  ) {
    const { count, rate } = band;
    this.#model = new PhaseModel(count, rate, after, hz);
    const { size } = this.#model;
    const freedom = Math.min(count >> 2, 1 + Math.ceil((2 * envelopeHz * count) / rate));
    const fall = Math.max(0, Math.min(60, rough.decayRate)) / rate;
    this.#envelope = new EnvelopeFit(count, freedom, fall);
    this.#along = new Float64Array(count);
    this.#across = new Float64Array(count);
    this.#angles = new Float64Array(count);
    this.#trust = new Float64Array(count).fill(1);
    this.#slopes = new Float64Array(count * size);
    this.#normal = new Float64Array(size * size);
    this.#factor = new Float64Array(size * size);
    this.#right = new Float64Array(size);
  }

  /** The best fit from all starting points. */
  run(): SettledFrequency | null {
    let best: Descent | null = null;
    for (const tau of glideStarts) {
      const start = this.#model.startAt(tau, this.rough.glide);
      if (this.#noise === 0) this.#listenToNoise(start);
      let found = this.#descend(start);
      if (found && !best) {
        // The first descent only finds the noise, by which all costs are then judged.
        this.#listenToNoise(found.parameters);
        found = this.#descend(found.parameters) ?? found;
      }
      if (found && (!best || found.cost < best.cost)) best = found;
      if (best && best.cost < goodEnough * this.band.count) break;
    }
    return best && this.#resultAt(best.parameters);
  }

  #descend(start: Float64Array): Descent | null {
    let parameters = start;
    let cost = Number.POSITIVE_INFINITY;
    let damping = 1e-3;
    for (let step = 0; step < stepLimit; step++) {
      this.#rotate(parameters);
      this.#envelope.fit(this.#along);
      this.#envelope.swing(this.#model.swing, this.band.rate);
      this.#weigh();
      cost = this.#costAt(parameters);
      this.#fillNormal(parameters);
      let gain = 0;
      for (let attempt = 0; attempt < 6 && gain <= 0; attempt++) {
        const trial = this.#stepFrom(parameters, damping);
        const trialCost = trial ? this.#costAt(trial) : Number.POSITIVE_INFINITY;
        gain = cost - trialCost;
        damping = gain > 0 ? Math.max(1e-6, damping / 10) : damping * 10;
        if (trial && gain > 0) [parameters, cost] = [trial, trialCost];
      }
      if (!(gain > 1e-4)) break;
    }
    return Number.isFinite(cost) ? { parameters, cost } : null;
  }

  /** Trust in each sample: the noise against the noise and what strays with the amplitude. */
  #weigh(): void {
    for (let n = 0; n < this.band.count; n++) {
      const stray = strayPart * (this.#envelope.values[n] ?? 0);
      this.#trust[n] = this.#noise / (this.#noise + stray * stray);
    }
  }

  /** Turns the band by the phase of `parameters`: `along` and `across` the line. */
  #rotate(parameters: Float64Array): void {
    const { re, im, count, rate } = this.band;
    this.#model.fillAngles(parameters, this.#angles);
    const turn = (2 * Math.PI * this.rough.offsetHz) / rate;
    for (let n = 0; n < count; n++) {
      const angle = this.rough.phase + turn * n + (this.#angles[n] ?? 0);
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const [x, y] = [re[n] ?? 0, im[n] ?? 0];
      this.#along[n] = x * cos + y * sin;
      this.#across[n] = y * cos - x * sin;
    }
  }

  #costAt(parameters: Float64Array): number {
    this.#rotate(parameters);
    let cost = 0;
    for (let n = 0; n < this.band.count; n++) {
      // A line does not turn round: an envelope below zero is as wrong as a phase that is off.
      const lacking = Math.min(0, this.#along[n] ?? 0);
      cost += (this.#trust[n] ?? 0) * ((this.#across[n] ?? 0) ** 2 + lacking * lacking);
    }
    return cost / this.#noise + this.#model.priorCost(parameters);
  }

  #fillNormal(parameters: Float64Array): void {
    const { size, precision, expected } = this.#model;
    const [normal, right, slopes] = [this.#normal, this.#right, this.#slopes];
    const amplitude = this.#envelope.values;
    this.#model.fillSlopes(parameters, slopes);
    normal.fill(0);
    right.fill(0);
    for (let n = 0; n < this.band.count; n++) {
      const a = amplitude[n] ?? 0;
      const trust = this.#trust[n] ?? 0;
      const error = trust * a * (this.#across[n] ?? 0);
      const weight = trust * a * a;
      const row = n * size;
      for (let i = 0; i < size; i++) {
        const slope = slopes[row + i] ?? 0;
        right[i] = (right[i] ?? 0) + slope * error;
        const weighted = weight * slope;
        for (let j = 0; j <= i; j++) {
          normal[i * size + j] = (normal[i * size + j] ?? 0) + weighted * (slopes[row + j] ?? 0);
        }
      }
    }
    for (let i = 0; i < size; i++) {
      const weight = this.#noise * (precision[i] ?? 0);
      right[i] = (right[i] ?? 0) - weight * ((parameters[i] ?? 0) - (expected[i] ?? 0));
      normal[i * size + i] = (normal[i * size + i] ?? 0) + weight;
    }
  }

  #factorise(damping: number): boolean {
    const { size } = this.#model;
    this.#factor.set(this.#normal);
    for (let i = 0; i < size; i++) {
      const at = i * size + i;
      this.#factor[at] = (this.#normal[at] ?? 0) * (1 + damping) + 1e-300;
    }
    return factorise(this.#factor, size);
  }

  #stepFrom(parameters: Float64Array, damping: number): Float64Array | null {
    if (!this.#factorise(damping)) return null;
    const step = this.#right.slice();
    solveFactorised(this.#factor, this.#model.size, step);
    const trial = parameters.map((value, i) => value + (step[i] ?? 0));
    return trial.every(Number.isFinite) ? trial : null;
  }

  #resultAt(parameters: Float64Array): SettledFrequency | null {
    const { size } = this.#model;
    this.#rotate(parameters);
    this.#envelope.fit(this.#along);
    this.#fillNormal(parameters);
    if (!this.#factorise(1e-12)) return null;
    const unit = new Float64Array(size);
    unit[settledIndex] = 1;
    solveFactorised(this.#factor, size, unit);
    const variance = this.#noise * Math.max(0, unit[settledIndex] ?? 0);
    return {
      offsetHz: this.rough.offsetHz + (parameters[settledIndex] ?? 0) / (2 * Math.PI),
      sigmaHz: Math.sqrt(variance) / (2 * Math.PI),
      glideHz: (parameters[glideIndex] ?? 0) / (2 * Math.PI),
      ...this.#line(),
    };
  }

  /** The fitted line over the window, and how much stands across it. */
  #line(): Pick<SettledFrequency, 'across' | 'misfit' | 'model'> {
    const { count } = this.band;
    const [re, im] = [new Float64Array(count), new Float64Array(count)];
    let [crossing, lacking, energy] = [0, 0, 0];
    for (let n = 0; n < count; n++) {
      const [along, across] = [this.#along[n] ?? 0, this.#across[n] ?? 0];
      const amplitude = this.#envelope.values[n] ?? 0;
      crossing += across * across;
      lacking += Math.min(0, along) ** 2;
      energy += amplitude * amplitude;
      // (along + i·across) is the band turned back by the phase, so that the turn follows from both.
      const a = amplitude / (along * along + across * across + 1e-300);
      const [x, y] = [this.band.re[n] ?? 0, this.band.im[n] ?? 0];
      re[n] = a * (x * along + y * across);
      im[n] = a * (y * along - x * across);
    }
    const misfit = (crossing + lacking) / (this.#noise * count);
    return { across: energy > 0 ? crossing / energy : 1, misfit, model: { re, im } };
  }

  /** Density of the noise across the line, as a variance per sample. */
  #listenToNoise(parameters: Float64Array): void {
    this.#rotate(parameters);
    // Without the window a strong beat at the line would leak into the noise beside it.
    const re = this.#across.map((value, n) => value * hann(n, this.band.count));
    const across = { ...this.band, re, im: new Float64Array(this.band.count) };
    const to = Math.min(noiseToHz, this.band.flatHz);
    this.#noise = meanByMedian(periodogram(across, 0, Math.min(noiseFromHz, to / 3), to));
  }
}

/** Hann window of unit power. */
const hann = (n: number, count: number): number =>
  Math.sqrt(2 / 3) * (1 - Math.cos((2 * Math.PI * (n + 0.5)) / count));
