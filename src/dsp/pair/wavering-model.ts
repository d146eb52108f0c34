// Lines whose amplitudes waver: each is the exponential of a slow complex function of time.

import type { WorkArrays } from '../numbers/work-arrays';
import { WaveringWaves } from './wavering-waves';

/** Where one line begins: offset from the band's centre, Hz; decay, 1/s; amplitude and phase at the first sample. */
export interface WaveringSeed {
  readonly offsetHz: number;
  readonly decayRate: number;
  readonly amplitude: number;
  readonly phase: number;
  /** Phase at the first sample of a glide that fades within `glideSeconds`, radians. */
  readonly glide?: number;
  /** How well its place is known, Hz; without it, some cents. */
  readonly spreadHz?: number;
}

/** The logarithm of an amplitude wavers up to this rate, Hz. */
const waverHz = 16;
/** Expected before looking, one standard deviation: each cosine of the wavering, nepers. */
const expectedWaver = 0.25;
/** Size (cents), time constant (s) and its spread (nepers) of a glide. */
const expectedGlideCents = 15;
const expectedGlideSeconds = 0.045;
const expectedGlideSpread = 0.35;
/** Time constant of the glide of a `WaveringSeed`, s. */
const glideSeconds = 0.06;
const shortestGlide = 0.015;
const longestGlide = 0.15;
/** Swing of the frequency for a wavering of one neper, cents. */
const expectedSwingCents = 0.5;
/** Decay rate, 1/s; around their starts: amplitude, nepers; phase, radians; frequency, cents. */
const expectedDecay = 8;
const expectedDecaySpread = 5;
const expectedLevelSpread = 1.5;
const expectedPhaseSpread = 2;
const expectedCents = 12;

const turnsPerCent = Math.LN2 / 1200;
/** Index of the logarithm of the glides' common time constant. */
export const tauIndex = 0;
/** A line's parameters, counted from its first one. */
export const [level, decay, phi, omega, glide, swing] = [0, 1, 2, 3, 4, 5] as const;
/** Before the cosines. */
export const fixedCount = 6;

export class WaveringModel {
  readonly perLine: number;
  readonly size: number;
  /** Inverse variances of the priors, and their centres. */
  readonly precision: Float64Array;
  readonly expected: Float64Array;
  /** The sum of all lines, and each line. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly lineRe: readonly Float64Array[];
  readonly lineIm: readonly Float64Array[];
  readonly waves: WaveringWaves;
  /** Per line: the time integral of its wavering, s. */
  readonly swings: readonly Float64Array[];
  readonly #waver: Float64Array;
  readonly #radiansPerCent: number;

  /** `after`: time of the first sample after the strike, s; `hz`: where the lines are, roughly. */
  constructor(
    readonly count: number,
    readonly rate: number,
    readonly after: number,
    hz: number,
    readonly lineCount: number,
    readonly work: WorkArrays,
  ) {
    const highest = Math.ceil((2 * waverHz * count) / rate);
    this.perLine = fixedCount + highest;
    this.size = 1 + lineCount * this.perLine;
    this.re = work.take(count);
    this.im = work.take(count);
    this.#waver = work.take(count);
    const each = () => Array.from({ length: lineCount }, () => work.take(count));
    this.lineRe = each();
    this.lineIm = each();
    this.swings = each();
    this.waves = new WaveringWaves(count, rate, highest, work);
    this.#radiansPerCent = 2 * Math.PI * hz * turnsPerCent;
    this.precision = work.take(this.size);
    this.expected = work.take(this.size);
  }

  /** Index of the first parameter of line `k`. */
  lineStart(k: number): number {
    return 1 + k * this.perLine;
  }

  /** Centres the priors on `seeds`, one for each line; fills `start` with the parameters to begin with. */
  expect(seeds: readonly WaveringSeed[], start: Float64Array): void {
    const { precision, expected } = this;
    precision.fill(1 / expectedWaver ** 2, 0, this.size);
    expected.fill(0, 0, this.size);
    precision[tauIndex] = 1 / expectedGlideSpread ** 2;
    expected[tauIndex] = Math.log(expectedGlideSeconds);
    const spread = this.#radiansPerCent;
    seeds.forEach((seed, k) => {
      const at = this.lineStart(k);
      const omegaSpread = seed.spreadHz ? 2 * Math.PI * seed.spreadHz : spread * expectedCents;
      precision[at + level] = 1 / expectedLevelSpread ** 2;
      precision[at + decay] = 1 / expectedDecaySpread ** 2;
      precision[at + phi] = 1 / expectedPhaseSpread ** 2;
      precision[at + omega] = 1 / omegaSpread ** 2;
      precision[at + glide] = 1 / (spread * expectedGlideCents) ** 2;
      precision[at + swing] = 1 / (spread * expectedSwingCents) ** 2;
      expected[at + level] = Math.log(Math.max(1e-12, seed.amplitude));
      expected[at + decay] = expectedDecay;
      expected[at + phi] = seed.phase;
      expected[at + omega] = 2 * Math.PI * seed.offsetHz;
    });
    for (let i = 0; i < this.size; i++) start[i] = expected[i] ?? 0;
    seeds.forEach((seed, k) => {
      start[this.lineStart(k) + decay] = Math.max(-2, Math.min(40, seed.decayRate));
      if (!seed.glide) return;
      const limit = 3 * expectedGlideCents * spread;
      const asked = -seed.glide / (glideSeconds * Math.exp(-this.after / glideSeconds));
      start[this.lineStart(k) + glide] = Math.max(-limit, Math.min(limit, asked));
      start[tauIndex] = Math.log(glideSeconds);
    });
  }

  /** Keeps the glides' time constant within reason, in place. */
  bound(p: Float64Array): void {
    const longest = Math.min(Math.log(longestGlide), p[tauIndex] ?? 0);
    p[tauIndex] = Math.max(Math.log(shortestGlide), longest);
  }

  /** −2·log of the priors, up to a constant. */
  priorCost(p: Float64Array): number {
    let cost = 0;
    for (let i = 0; i < this.size; i++) {
      cost += (this.precision[i] ?? 0) * ((p[i] ?? 0) - (this.expected[i] ?? 0)) ** 2;
    }
    return cost;
  }

  /** Mean square of line `k` from sample `from` on. */
  powerOf(k: number, from: number): number {
    const re = this.lineRe[k] ?? this.re;
    const im = this.lineIm[k] ?? this.im;
    let sum = 0;
    for (let n = from; n < this.count; n++) sum += (re[n] ?? 0) ** 2 + (im[n] ?? 0) ** 2;
    return sum / (this.count - from);
  }

  /** Computes all lines, their wavering and their sum. */
  fill(p: Float64Array): void {
    this.re.fill(0, 0, this.count);
    this.im.fill(0, 0, this.count);
    for (let k = 0; k < this.lineCount; k++) this.#fillLine(p, k);
  }

  #fillLine(p: Float64Array, k: number): void {
    const { count, rate, re, im } = this;
    const at = this.lineStart(k);
    const waver = this.#waver.fill(p[at + level] ?? 0, 0, count);
    const swung = (this.swings[k] ?? waver).fill(0, 0, count);
    for (let j = 1; j <= this.perLine - fixedCount; j++) {
      const weight = p[at + fixedCount + j - 1] ?? 0;
      const cosine = this.waves.cosine(j);
      const sine = this.waves.sine(j);
      for (let n = 0; n < count; n++) {
        waver[n] = (waver[n] ?? 0) + weight * (cosine[n] ?? 0);
        swung[n] = (swung[n] ?? 0) + weight * (sine[n] ?? 0);
      }
    }
    const lineRe = this.lineRe[k] ?? re;
    const lineIm = this.lineIm[k] ?? im;
    const tau = Math.exp(p[tauIndex] ?? 0);
    const fade = Math.exp(-1 / (rate * tau));
    let reach = (p[at + glide] ?? 0) * tau * Math.exp(-this.after / tau);
    const fall = p[at + decay] ?? 0;
    const start = p[at + phi] ?? 0;
    const turn = p[at + omega] ?? 0;
    const kappa = p[at + swing] ?? 0;
    for (let n = 0; n < count; n++) {
      const t = n / rate;
      const size = Math.exp(Math.min(20, (waver[n] ?? 0) - fall * t));
      const angle = start + turn * t - reach + kappa * (swung[n] ?? 0);
      reach *= fade;
      const x = size * Math.cos(angle);
      const y = size * Math.sin(angle);
      lineRe[n] = x;
      lineIm[n] = y;
      re[n] = (re[n] ?? 0) + x;
      im[n] = (im[n] ?? 0) + y;
    }
  }
}
