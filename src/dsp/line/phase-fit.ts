// Fits the phase of one decaying line with a free real envelope to a narrow band.
// Limits of the search are chosen, no source; `bench:ear` holds what comes of them.

import { solveFactorised } from '../../domain/numbers/cholesky';
import { factoriseDamped, undamped } from '../numbers/damped-equations';
import { dot } from '../numbers/dot-product';
import { hann, meanByMedian, periodogram } from '../spectrum/band-noise';
import type { BandSignal } from '../spectrum/band-signal';
import { EnvelopeFit } from './envelope-fit';
import { glideIndex, PhaseModel, settledIndex } from './phase-model';

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

/** The envelope may move this fast, Hz. */
export const envelopeHz = 16;
/** The noise is measured between these distances from the line, Hz. */
const noiseFromHz = 18;
const noiseToHz = 38;
const stepLimit = 12;
const attempts = 6;
/** A step that gains less than this (in −2·log of the probability) ends a descent. */
const leastGain = 1e-4;
/** Fraction of a line's own amplitude that may lie across it without meaning anything. */
const strayPart = 0.04;

/**
 * z(t) = A(t)·exp(iθ(t)): Levenberg–Marquardt on the part of z across the line. All arrays are borrowed from the
 * band's work arrays, for the caller to release.
 */
export class PhaseFit {
  readonly model: PhaseModel;
  readonly envelope: EnvelopeFit;
  /** The band turned back by the phase last tried: along the line and across it. */
  readonly along: Float64Array;
  readonly across: Float64Array;
  /** Density of the noise across the line, as a variance per sample. */
  noise = 0;
  readonly #angles: Float64Array;
  readonly #trust: Float64Array;
  readonly #weight: Float64Array;
  readonly #weighted: Float64Array;
  readonly #error: Float64Array;
  readonly #normal: Float64Array;
  readonly #factor: Float64Array;
  readonly #right: Float64Array;
  readonly #trial: Float64Array;

  /** `after`: time of the first sample after the strike, s; `hz`: the line's rough frequency. */
  constructor(
    readonly band: BandSignal,
    readonly rough: RoughLine,
    after: number,
    readonly hz: number,
  ) {
    const { count, rate, work } = band;
    this.model = new PhaseModel(count, rate, after, hz, work);
    const { size } = this.model;
    const freedom = Math.min(count >> 2, 1 + Math.ceil((2 * envelopeHz * count) / rate));
    const fall = Math.max(0, Math.min(60, rough.decayRate)) / rate;
    this.envelope = new EnvelopeFit(count, freedom, fall, work);
    [this.along, this.across, this.#angles] = [
      work.take(count),
      work.take(count),
      work.take(count),
    ];
    this.#trust = work.take(count).fill(1, 0, count);
    [this.#weight, this.#weighted] = [work.take(count), work.take(count)];
    this.#error = work.take(count);
    [this.#normal, this.#factor] = [work.take(size * size), work.take(size * size)];
    [this.#right, this.#trial] = [work.take(size), work.take(size)];
  }

  /** Moves `parameters` to the nearest minimum; returns −2·log of its probability, up to a constant. */
  descend(parameters: Float64Array): number {
    const { size } = this.model;
    let cost = Number.POSITIVE_INFINITY;
    let damping = 1e-3;
    this.rotate(parameters);
    for (let step = 0; step < stepLimit; step++) {
      this.envelope.fit(this.along);
      this.envelope.swing(this.model.swing, this.band.rate);
      this.#weigh();
      cost = this.#costAt(parameters);
      this.fillNormal(parameters);
      let gain = 0;
      for (let attempt = 0; attempt < attempts && gain <= 0; attempt++) {
        const isStep = this.#stepFrom(parameters, damping);
        const trialCost = isStep ? this.#costAt(this.#trial) : Number.POSITIVE_INFINITY;
        gain = cost - trialCost;
        damping = gain > 0 ? Math.max(1e-6, damping / 10) : damping * 10;
        if (!isStep || !(gain > 0)) continue;
        for (let i = 0; i < size; i++) parameters[i] = this.#trial[i];
        cost = trialCost;
      }
      if (!(gain > leastGain)) break;
    }
    return cost;
  }

  /** Trust in each sample: the noise against the noise and what strays with the amplitude. */
  #weigh(): void {
    const { values } = this.envelope;
    for (let n = 0; n < this.band.count; n++) {
      const stray = strayPart * values[n];
      this.#trust[n] = this.noise / (this.noise + stray * stray);
    }
  }

  /** Turns the band back by the phase of `parameters`. */
  rotate(parameters: Float64Array): void {
    const { re, im, count, rate } = this.band;
    const along = this.along;
    const across = this.across;
    const angles = this.#angles;
    this.model.fillAngles(parameters, angles);
    const { phase } = this.rough;
    const turn = (2 * Math.PI * this.rough.offsetHz) / rate;
    for (let n = 0; n < count; n++) {
      const angle = phase + turn * n + angles[n];
      const cos = Math.cos(angle);
      const sin = Math.sin(angle);
      const x = re[n];
      const y = im[n];
      along[n] = x * cos + y * sin;
      across[n] = y * cos - x * sin;
    }
  }

  #costAt(parameters: Float64Array): number {
    this.rotate(parameters);
    const along = this.along;
    const across = this.across;
    const trust = this.#trust;
    let cost = 0;
    for (let n = 0; n < this.band.count; n++) {
      // A line does not turn round: an envelope below zero is as wrong as a phase that is off.
      const lacking = Math.min(0, along[n]);
      cost += trust[n] * (across[n] ** 2 + lacking * lacking);
    }
    return cost / this.noise + this.model.priorCost(parameters);
  }

  /** Fills the normal equations for the parameters last tried. */
  fillNormal(parameters: Float64Array): void {
    const { size, precision, expected, slopes } = this.model;
    const { count } = this.band;
    const weight = this.#weight;
    const weighted = this.#weighted;
    const error = this.#error;
    const { values } = this.envelope;
    this.model.bend(parameters);
    for (let n = 0; n < count; n++) {
      const a = values[n];
      const trusted = this.#trust[n] * a;
      error[n] = trusted * this.across[n];
      weight[n] = trusted * a;
    }
    for (let i = 0; i < size; i++) {
      const slope = slopes[i];
      for (let n = 0; n < count; n++) weighted[n] = weight[n] * slope[n];
      for (let j = 0; j <= i; j++) {
        this.#normal[i * size + j] = dot(weighted, slopes[j], count);
      }
      const prior = this.noise * precision[i];
      const away = parameters[i] - expected[i];
      this.#right[i] = dot(error, slope, count) - prior * away;
      this.#normal[i * size + i] = this.#normal[i * size + i] + prior;
    }
  }

  #factorise(damping: number): boolean {
    return factoriseDamped(this.#normal, this.model.size, damping, this.#factor);
  }

  /** Fills the trial with where the next step ends; false if there is no next step. */
  #stepFrom(parameters: Float64Array, damping: number): boolean {
    if (!this.#factorise(damping)) return false;
    const { size } = this.model;
    const trial = this.#trial;
    for (let i = 0; i < size; i++) trial[i] = this.#right[i];
    solveFactorised(this.#factor, size, trial);
    let isSound = true;
    for (let i = 0; i < size; i++) {
      trial[i] = parameters[i] + trial[i];
      isSound &&= Number.isFinite(trial[i]);
    }
    return isSound;
  }

  /**
   * Variance of the settled angular frequency with `share` of the glide in it, by the normal equations last filled; null
   * if they cannot be solved.
   */
  settledVariance(share: number): number | null {
    if (!this.#factorise(undamped)) return null;
    const sums = this.#trial.fill(0, 0, this.model.size);
    sums[settledIndex] = 1;
    sums[glideIndex] = share;
    solveFactorised(this.#factor, this.model.size, sums);
    const variance = sums[settledIndex] + share * sums[glideIndex];
    return this.noise * Math.max(0, variance);
  }

  /** Measures the noise beside the line, with the line at `parameters`. */
  listenToNoise(parameters: Float64Array): void {
    this.rotate(parameters);
    const { count, flatHz } = this.band;
    const re = this.#weighted;
    const im = this.#error.fill(0, 0, count);
    for (let n = 0; n < count; n++) re[n] = this.across[n] * hann(n, count);
    const to = Math.min(noiseToHz, flatHz);
    const beside = periodogram({ ...this.band, re, im }, 0, Math.min(noiseFromHz, to / 3), to);
    this.noise = meanByMedian(beside);
  }
}
