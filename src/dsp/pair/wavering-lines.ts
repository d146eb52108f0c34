// Fits a few lines close together, each with a slowly wavering amplitude, to a narrow band at once.

import { factorise, solveFactorised } from '../numbers/solve-symmetric';
import type { BandSignal } from '../spectrum/band-signal';
import {
  decay,
  glide,
  level,
  omega,
  phi,
  WaveringModel,
  type WaveringSeed,
} from './wavering-model';
import { WaveringNormal } from './wavering-normal';

export interface WaveringLine extends WaveringSeed {
  /** One standard error of the offset, Hz. */
  readonly sigmaHz: number;
  /** Frequency at the strike above the settled one, Hz. */
  readonly glideHz: number;
  /** Mean square amplitude over the window and over its second half. */
  readonly power: number;
  readonly latePower: number;
}

export interface WaveringFit {
  readonly lines: readonly WaveringLine[];
  /** −2·log of the evidence by Laplace's method, up to a constant that is the same for all models. */
  readonly evidence: number;
  /** What the lines leave, and its mean square. */
  readonly rest: BandSignal;
  readonly restPower: number;
  /** Where the search ended, to begin another from. */
  readonly parameters: Float64Array;
}

/** A step that gains less than this (−2·log) ends the search. */
const leastGain = 0.3;
const turn = 2 * Math.PI;

/** Most probable lines in one band, by Levenberg–Marquardt; all arrays come from the band's work arrays. */
export class WaveringSearch {
  readonly #model: WaveringModel;
  readonly #normal: WaveringNormal;
  readonly #factor: Float64Array;
  readonly #trial: Float64Array;
  readonly #restRe: Float64Array;
  readonly #restIm: Float64Array;
  #band: BandSignal;

  /** `after`: time of the first sample after the strike, s; `hz`: where the lines are, roughly. */
  constructor(band: BandSignal, after: number, hz: number, lineCount: number) {
    const { count, rate, work } = band;
    this.#band = band;
    this.#model = new WaveringModel(count, rate, after, hz, lineCount, work);
    this.#normal = new WaveringNormal(this.#model);
    const { size } = this.#model;
    this.#factor = work.take(size ** 2);
    this.#trial = work.take(size);
    this.#restRe = work.take(count);
    this.#restIm = work.take(count);
  }

  /** Searches in `band`, which must be as long as the first one. `noise`: variance of a complex sample, so that its density is `noise` / rate; `begin`: parameters to begin with. */
  fit(
    band: BandSignal,
    seeds: readonly WaveringSeed[],
    noise: number,
    stepLimit: number,
    begin: Float64Array | null = null,
  ): WaveringFit | null {
    this.#band = band;
    const { size } = this.#model;
    const parameters = band.work.take(size);
    this.#model.expect(seeds, parameters);
    for (let i = 0; begin && i < size; i++) parameters[i] = begin[i] ?? 0;
    let cost = this.#costAt(parameters, noise);
    this.#fillNormal(parameters, noise);
    let damping = 1e-2;
    for (let step = 0; step < stepLimit && damping < 1e5; step++) {
      if (!this.#stepFrom(parameters, damping)) return null;
      const trialCost = this.#costAt(this.#trial, noise);
      if (!(trialCost < cost)) {
        damping *= 8;
        continue;
      }
      const gain = cost - trialCost;
      for (let i = 0; i < size; i++) parameters[i] = this.#trial[i] ?? 0;
      cost = trialCost;
      damping = Math.max(1e-6, damping / 8);
      this.#fillNormal(parameters, noise);
      if (gain < leastGain) break;
    }
    return this.#resultAt(parameters, noise);
  }

  #costAt(parameters: Float64Array, noise: number): number {
    this.#model.fill(parameters);
    return (2 * this.#takeOut(this.#band)) / noise + this.#model.priorCost(parameters);
  }

  /** Fills the rest; returns its energy. */
  #takeOut({ re, im, count }: BandSignal): number {
    const restRe = this.#restRe;
    const restIm = this.#restIm;
    const modelRe = this.#model.re;
    const modelIm = this.#model.im;
    let energy = 0;
    for (let n = 0; n < count; n++) {
      const a = (re[n] ?? 0) - (modelRe[n] ?? 0);
      const b = (im[n] ?? 0) - (modelIm[n] ?? 0);
      restRe[n] = a;
      restIm[n] = b;
      energy += a * a + b * b;
    }
    return energy;
  }

  #fillNormal(parameters: Float64Array, noise: number): void {
    const { size, precision, expected } = this.#model;
    const { matrix, gradient } = this.#normal;
    this.#normal.fill(parameters, this.#restRe, this.#restIm, 2 / noise);
    for (let i = 0; i < size; i++) {
      const weight = precision[i] ?? 0;
      matrix[i * size + i] = (matrix[i * size + i] ?? 0) + weight;
      gradient[i] = (gradient[i] ?? 0) - weight * ((parameters[i] ?? 0) - (expected[i] ?? 0));
    }
  }

  #factorise(damping: number): boolean {
    const { size } = this.#model;
    const { matrix } = this.#normal;
    const factor = this.#factor;
    for (let at = 0; at < size * size; at++) factor[at] = matrix[at] ?? 0;
    for (let at = 0; at < size * size; at += size + 1)
      factor[at] = (matrix[at] ?? 0) * (1 + damping);
    return factorise(factor, size);
  }

  /** Fills the trial with the next step's end; false where there is none. */
  #stepFrom(parameters: Float64Array, damping: number): boolean {
    if (!this.#factorise(damping)) return false;
    const { size } = this.#model;
    const trial = this.#trial;
    for (let i = 0; i < size; i++) trial[i] = this.#normal.gradient[i] ?? 0;
    solveFactorised(this.#factor, size, trial);
    for (let i = 0; i < size; i++) trial[i] = (trial[i] ?? 0) + (parameters[i] ?? 0);
    this.#model.bound(trial);
    for (let i = 0; i < size; i++) if (!Number.isFinite(trial[i])) return false;
    return true;
  }

  #resultAt(parameters: Float64Array, noise: number): WaveringFit | null {
    const { size, precision, lineCount } = this.#model;
    let evidence = this.#costAt(parameters, noise);
    if (!Number.isFinite(evidence) || !this.#factorise(0)) return null;
    for (let i = 0; i < size; i++) {
      evidence += 2 * Math.log(this.#factor[i * size + i] ?? 1) - Math.log(precision[i] ?? 1);
    }
    const lines = Array.from({ length: lineCount }, (_, k) => this.#lineAt(parameters, k));
    const { count, work } = this.#band;
    const re = work.take(count);
    const im = work.take(count);
    for (let n = 0; n < count; n++) {
      re[n] = this.#restRe[n] ?? 0;
      im[n] = this.#restIm[n] ?? 0;
    }
    const restPower = this.#takeOut(this.#band) / count;
    return { lines, evidence, parameters, rest: { ...this.#band, re, im }, restPower };
  }

  #lineAt(parameters: Float64Array, k: number): WaveringLine {
    const at = this.#model.lineStart(k);
    const unit = this.#trial.fill(0, 0, this.#model.size);
    unit[at + omega] = 1;
    solveFactorised(this.#factor, this.#model.size, unit);
    return {
      offsetHz: (parameters[at + omega] ?? 0) / turn,
      decayRate: parameters[at + decay] ?? 0,
      amplitude: Math.exp(parameters[at + level] ?? 0),
      phase: parameters[at + phi] ?? 0,
      sigmaHz: Math.sqrt(Math.max(0, unit[at + omega] ?? 0)) / turn,
      glideHz: (parameters[at + glide] ?? 0) / turn,
      power: this.#model.powerOf(k, 0),
      latePower: this.#model.powerOf(k, this.#band.count >> 1),
    };
  }
}
