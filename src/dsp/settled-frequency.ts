// The settled frequency of one decaying line from its phase: the amplitude may do what it likes.
import { EnvelopeFit } from './envelope-fit';
import type { BandSignal } from './fit-damped-lines';
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
  /** Energy across the line that neither its envelope nor its glide explains, as a part of its energy. */
  readonly across: number;
}

/** Glides of these time constants are the starting points, s. */
const glideStarts = [0.045, 0.09, 0.022];
/** Expected before looking, one standard deviation: a glide's size and time constant, and the swing that follows the envelope. */
const expectedGlideCents = 25;
const expectedGlideSeconds = 0.045;
const expectedGlideSpread = 0.45;
const expectedSwingCents = 0.2;
/** The envelope is free to move this fast, Hz. */
const envelopeHz = 16;
/** The noise is measured between these distances from the line, Hz. */
const noiseFromHz = 6;
const noiseToHz = 38;
const stepLimit = 12;
const size = 5;
const turnsPerCent = Math.LN2 / 1200;

/**
 * Fits z(t) = A(t)·exp(i(φ + ωt − G·τ·exp(−t/τ) + κ·h(t))) with a free real envelope A, a glide of G
 * rad/s at the strike and a swing h that follows the envelope, to a band in which only this line is left.
 * `after`: time of the first sample after the strike, s; `centreHz`: the band's centre.
 * Levenberg–Marquardt on the part of z across the line, normal priors on G, ln τ and κ; the standard error
 * comes from the noise measured beside the line and holds the doubt about the glide. A free A costs no
 * certainty, because amplitude and phase of a line are independent (Kay, Fundamentals of Statistical
 * Signal Processing I, 1993, ch. 3.11).
 */
export function settledFrequency(
  band: BandSignal,
  rough: RoughLine,
  after: number,
  centreHz: number,
): SettledFrequency | null {
  if (band.count < 16) return null;
  const fit = new PhaseFit(band, rough, after, centreHz + rough.offsetHz);
  return fit.run();
}

/** The work arrays of one line's fit; parameters are (φ, ω, G, ln τ, κ), the first two against the rough line. */
class PhaseFit {
  readonly #envelope: EnvelopeFit;
  readonly #along: Float64Array;
  readonly #across: Float64Array;
  readonly #swing: Float64Array;
  readonly #normal = new Float64Array(size * size);
  readonly #factor = new Float64Array(size * size);
  readonly #right = new Float64Array(size);
  /** Prior means and precisions of the parameters. */
  readonly #expected: Float64Array;
  readonly #precision: Float64Array;
  #noise = 0;

  constructor(
    readonly band: BandSignal,
    readonly rough: RoughLine,
    readonly after: number,
    hz: number,
  ) {
    const { count, rate } = band;
    const freedom = Math.min(count >> 2, 1 + Math.ceil((2 * envelopeHz * count) / rate));
    this.#envelope = new EnvelopeFit(count, freedom, clamp(rough.decayRate, 0, 60) / rate);
    this.#along = new Float64Array(count);
    this.#across = new Float64Array(count);
    this.#swing = new Float64Array(count);
    const radiansPerCent = 2 * Math.PI * hz * turnsPerCent;
    this.#expected = Float64Array.of(0, 0, 0, Math.log(expectedGlideSeconds), 0);
    this.#precision = Float64Array.of(
      0,
      0,
      1 / (radiansPerCent * expectedGlideCents) ** 2,
      1 / expectedGlideSpread ** 2,
      1 / (radiansPerCent * expectedSwingCents) ** 2,
    );
  }

  /** The best fit from all starting points. */
  run(): SettledFrequency | null {
    let best: { parameters: Float64Array; cost: number } | null = null;
    for (const tau of glideStarts) {
      const found = this.#descend(this.#startAt(tau));
      if (found && (!best || found.cost < best.cost)) best = found;
      // The first descent only finds the noise, by which all costs are then judged.
      if (best === found && found) {
        this.#listenToNoise(found.parameters);
        best = this.#descend(found.parameters) ?? best;
      }
    }
    return best && this.#resultAt(best.parameters);
  }

  #startAt(tau: number): Float64Array {
    const glide = -this.rough.glide / (tau * Math.exp(-this.after / tau));
    const limit = 3 / Math.sqrt(this.#precision[2] ?? 1);
    return Float64Array.of(0, 0, clamp(glide, -limit, limit), Math.log(tau), 0);
  }

  #descend(start: Float64Array): { parameters: Float64Array; cost: number } | null {
    let parameters = start;
    this.#rotate(parameters);
    this.#envelope.fit(this.#along);
    if (this.#noise === 0) this.#listenToNoise(parameters);
    let cost = this.#costAt(parameters);
    let damping = 1e-3;
    for (let step = 0; step < stepLimit; step++) {
      this.#rotate(parameters);
      this.#envelope.fit(this.#along);
      this.#envelope.swing(this.#swing, this.band.rate);
      cost = this.#costAt(parameters);
      this.#fillNormal(parameters);
      let isBetter = false;
      for (let attempt = 0; attempt < 6 && !isBetter; attempt++) {
        const trial = this.#stepFrom(parameters, damping);
        const trialCost = trial ? this.#costAt(trial) : Number.POSITIVE_INFINITY;
        isBetter = trialCost < cost;
        if (trial && isBetter) {
          const gain = cost - trialCost;
          parameters = trial;
          cost = trialCost;
          damping = Math.max(1e-6, damping / 10);
          if (gain < 1e-4) return { parameters, cost };
        } else damping *= 10;
      }
      if (!isBetter) break;
    }
    return Number.isFinite(cost) ? { parameters, cost } : null;
  }

  /** Turns the band by the phase of `parameters`: `along` and `across` the line. */
  #rotate(parameters: Float64Array): void {
    const { re, im, count, rate } = this.band;
    const [phi = 0, omega = 0, glide = 0, logTau = 0, kappa = 0] = parameters;
    const tau = Math.exp(logTau);
    const start = this.rough.phase + phi;
    const turn = 2 * Math.PI * this.rough.offsetHz + omega;
    for (let n = 0; n < count; n++) {
      const t = n / rate;
      const gliding = glide * tau * Math.exp(-(this.after + t) / tau);
      const angle = start + turn * t - gliding + kappa * (this.#swing[n] ?? 0);
      const cos = Math.cos(angle);
      const sin = Math.sin(angle);
      this.#along[n] = (re[n] ?? 0) * cos + (im[n] ?? 0) * sin;
      this.#across[n] = (im[n] ?? 0) * cos - (re[n] ?? 0) * sin;
    }
  }

  #costAt(parameters: Float64Array): number {
    this.#rotate(parameters);
    let cost = 0;
    for (let n = 0; n < this.band.count; n++) {
      // What turned against the line counts as far as the line is strong.
      const lacking = Math.min(0, this.#along[n] ?? 0);
      cost += (this.#across[n] ?? 0) ** 2 + lacking * lacking;
    }
    cost /= this.#noise;
    for (let i = 0; i < size; i++) {
      const away = (parameters[i] ?? 0) - (this.#expected[i] ?? 0);
      cost += (this.#precision[i] ?? 0) * away * away;
    }
    return cost;
  }

  #fillNormal(parameters: Float64Array): void {
    const amplitude = this.#envelope.values;
    const [normal, right] = [this.#normal, this.#right];
    const [, , glide = 0, logTau = 0] = parameters;
    const tau = Math.exp(logTau);
    const { count, rate } = this.band;
    normal.fill(0);
    right.fill(0);
    const row = new Float64Array(size);
    for (let n = 0; n < count; n++) {
      const a = amplitude[n] ?? 0;
      const t = n / rate;
      const fading = Math.exp(-(this.after + t) / tau);
      row[0] = a;
      row[1] = a * t;
      row[2] = -a * tau * fading;
      row[3] = -a * glide * (tau + this.after + t) * fading;
      row[4] = a * (this.#swing[n] ?? 0);
      for (let i = 0; i < size; i++) {
        right[i] = (right[i] ?? 0) + (row[i] ?? 0) * (this.#across[n] ?? 0);
        for (let j = 0; j <= i; j++) {
          normal[i * size + j] = (normal[i * size + j] ?? 0) + (row[i] ?? 0) * (row[j] ?? 0);
        }
      }
    }
    for (let i = 0; i < size; i++) {
      const weight = this.#noise * (this.#precision[i] ?? 0);
      right[i] = (right[i] ?? 0) - weight * ((parameters[i] ?? 0) - (this.#expected[i] ?? 0));
      normal[i * size + i] = (normal[i * size + i] ?? 0) + weight;
    }
  }

  #factorise(damping: number): boolean {
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
    solveFactorised(this.#factor, size, step);
    const trial = parameters.map((value, i) => value + (step[i] ?? 0));
    return trial.every(Number.isFinite) ? trial : null;
  }

  #resultAt(parameters: Float64Array): SettledFrequency | null {
    this.#rotate(parameters);
    this.#envelope.fit(this.#along);
    const amplitude = this.#envelope.values;
    let crossing = 0;
    let energy = 0;
    for (let n = 0; n < this.band.count; n++) {
      crossing += (this.#across[n] ?? 0) ** 2;
      energy += (amplitude[n] ?? 0) ** 2;
    }
    this.#fillNormal(parameters);
    if (!(energy > 0) || !this.#factorise(1e-12)) return null;
    const unit = new Float64Array(size);
    unit[1] = 1;
    solveFactorised(this.#factor, size, unit);
    const [, omega = 0, glide = 0] = parameters;
    return {
      offsetHz: this.rough.offsetHz + omega / (2 * Math.PI),
      sigmaHz: Math.sqrt(this.#noise * Math.max(0, unit[1] ?? 0)) / (2 * Math.PI),
      glideHz: glide / (2 * Math.PI),
      across: crossing / energy,
    };
  }

  /** Takes the density of the noise across the line, as a variance per sample: median of a periodogram beside it. */
  #listenToNoise(parameters: Float64Array): void {
    this.#rotate(parameters);
    const { count, rate } = this.band;
    const powers: number[] = [];
    for (let k = Math.ceil((noiseFromHz * count) / rate); k <= (noiseToHz * count) / rate; k++) {
      const turn = (2 * Math.PI * k) / count;
      let sumRe = 0;
      let sumIm = 0;
      for (let n = 0; n < count; n++) {
        const value = this.#across[n] ?? 0;
        sumRe += value * Math.cos(turn * n);
        sumIm += value * Math.sin(turn * n);
      }
      powers.push((sumRe * sumRe + sumIm * sumIm) / count);
    }
    powers.sort((a, b) => a - b);
    // The median of an exponential distribution is ln 2 times its mean.
    this.#noise = Math.max(1e-18, (powers[powers.length >> 1] ?? 0) / Math.LN2);
  }
}

const clamp = (value: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, value));
