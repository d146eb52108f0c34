// Decides between one line and two in a narrow band by what explains it best.

import { fitDampedLines } from '../line/fit-damped-lines';
import { hann, meanByMedian, periodogram } from '../spectrum/band-noise';
import type { BandSignal } from '../spectrum/band-signal';
import { difference, powerOf, sum, withoutDamped } from '../spectrum/band-sums';
import type { Band, SpectralLine } from '../spectrum/strike-spectrum';
import { pairStarts } from './pair-starts';
import { type WaveringFit, type WaveringLine, WaveringSearch } from './wavering-lines';
import type { WaveringSeed } from './wavering-model';

/** Two lines, lower first, and what they leave: as a part of the energy, and as a multiple of the noise. */
export interface FoundPair {
  readonly lines: readonly [WaveringLine, WaveringLine];
  readonly unexplained: number;
  readonly misfit: number;
}

/** Two lines are this far apart, cents and at least Hz. */
const nearestCents = 7;
const furthestCents = 25;
const nearestHz = 2;
/** Lines closer than this are no neighbours: that is where an energy exchange puts its sidebands, Hz. */
const exchangeHz = 24;
const exchangeCents = 80;
const mostNeighbours = 2;
const furthestNeighbourHz = 70;
const weakestNeighbour = 1 / 30;
/** How well a neighbour's place is known from the spectrum, Hz. */
const neighbourSpreadHz = 1.5;
/** A neighbour's fit that strays further from where it was seen has found something of the pair, Hz. */
const largestStrayHz = 6;
/** Two lines must be this much more probable than one (−2·log of evidence). */
const enough = 100;
/** The weaker line is at most this far below the other, over the window's second half, dB. */
const weakestDb = 20;
/** The same where both lines leave more than noise. */
const weakestDoubtfulDb = 12;
/**
 * A weaker line further below, over the whole window and over its second half, may be a sideband of the other, dB: of
 * an energy exchange 10 dB deep (modulated by ±0.576 nepers, I₁/I₀ = −11.2 dB) whose frequency swings by 0.3 cents.
 */
const sidebandDb = 10;
/** The noise is measured between these distances from the line, Hz. */
const [noiseFromHz, noiseToHz] = [18, 42];
/** No model is better than this part of the energy. */
const floor = 1e-4;
/** Lines that leave no more than this many times the noise explain the sound. */
const explained = 1.8;
const steps = 20;
/** Times that neighbours and pair are measured in turn. */
const rounds = 2;

const centsOf = (hz: number): number => (hz * Math.LN2) / 1200;

/** One search in one band: `others` are taken out of it as far as they are no part of the pair. */
export class PairSearch {
  readonly #neighbours: readonly number[];
  readonly #seed: number;
  readonly #energy: number;
  readonly #searches: readonly WaveringSearch[];
  /** The band without its neighbours, as far as they are known. */
  #clean: BandSignal;

  constructor(
    readonly band: Band,
    readonly line: SpectralLine,
    others: readonly SpectralLine[],
    after: number,
  ) {
    this.#seed = line.hz - band.centreHz;
    this.#energy = powerOf(band);
    this.#clean = band;
    this.#searches = [1, 2].map((lines) => new WaveringSearch(band, after, line.hz, lines));
    const cent = centsOf(line.hz);
    const reach = Math.max((furthestCents + 1) * cent, Math.min(exchangeHz, exchangeCents * cent));
    this.#neighbours = others
      .filter((other) => {
        const away = Math.abs(other.hz - line.hz);
        return (
          away > reach &&
          away < furthestNeighbourHz &&
          other.amplitude > line.amplitude * weakestNeighbour
        );
      })
      .slice(0, mostNeighbours)
      .map((other) => other.hz - band.centreHz);
    const rough =
      this.#neighbours.length > 0 && fitDampedLines(band, [this.#seed, ...this.#neighbours], false);
    if (rough) this.#clean = withoutDamped(band, rough.lines.slice(1));
  }

  /** The two lines, or null if one explains the band as well. */
  run(): FoundPair | null {
    let noise = this.#noiseOf(this.#clean);
    const explains = (fit: WaveringFit): boolean => fit.restPower < explained * noise;
    let single = this.#single(this.#seed, noise);
    if (!single) return null;
    noise = Math.min(noise, this.#noiseOf(single.rest));
    if (!explains(single) && this.#neighbours.length > 0) {
      this.#takeNeighboursOut(single, noise);
      single = this.#single(this.#seed, noise) ?? single;
      noise = Math.min(noise, this.#noiseOf(single.rest));
    }
    if (explains(single)) return null;
    let pair: WaveringFit | null = null;
    const reach = (furthestCents + 1) * centsOf(this.line.hz);
    for (const seeds of pairStarts(this.#clean, this.#seed, reach, nearestHz)) {
      pair = better(pair, this.#fit(seeds, noise));
      if (pair && explains(pair) && twoOf(pair, this.line.hz, noise)) break;
    }
    pair = this.#refined(pair, noise);
    if (!pair || !twoOf(pair, this.line.hz, noise)) return null;
    noise = this.#noiseOf(pair.rest);
    pair = this.#fit(pair.lines, noise, pair.parameters) ?? pair;
    const two = twoOf(pair, this.line.hz, noise);
    if (!two) return null;
    const stronger = two[0].power > two[1].power ? two[0] : two[1];
    single = this.#single(stronger.offsetHz, noise);
    if (single && single.evidence - pair.evidence < enough) return null;
    return {
      lines: two,
      unexplained: pair.restPower / this.#energy,
      misfit: pair.restPower / noise,
    };
  }

  /** Fits the neighbours to what `fit` leaves of the band, and takes them out. */
  #takeNeighboursOut(fit: WaveringFit, noise: number): void {
    if (this.#neighbours.length === 0) return;
    // What the fit itself took out.
    const own = difference(this.#clean, fit.rest);
    let rest = difference(this.band, own);
    for (const seed of this.#neighbours) {
      const rough = fitDampedLines(rest, [seed], false)?.lines[0];
      const near = rough && { ...rough, offsetHz: seed, spreadHz: neighbourSpreadHz };
      const found = near && this.#searches[0]?.fit(rest, [near], noise, steps);
      const strayed = Math.abs((found?.lines[0]?.offsetHz ?? seed) - seed);
      if (found && strayed < largestStrayHz) rest = found.rest;
    }
    this.#clean = sum(rest, own);
  }

  /** A pair fitted again after the neighbours have been measured without it. */
  #refined(pair: WaveringFit | null, noise: number): WaveringFit | null {
    let best = pair;
    for (let round = 0; best && round < rounds && this.#neighbours.length > 0; round++) {
      if (best.restPower < explained * noise) break;
      this.#takeNeighboursOut(best, noise);
      best = this.#fit(best.lines, noise, best.parameters) ?? best;
    }
    return best;
  }

  #single(seed: number, noise: number): WaveringFit | null {
    const rough = fitDampedLines(this.#clean, [seed], true);
    const line = rough?.lines[0];
    return line ? this.#fit([{ ...line, glide: rough.glide }], noise) : null;
  }

  #fit(
    seeds: readonly WaveringSeed[],
    noise: number,
    begin: Float64Array | null = null,
  ): WaveringFit | null {
    return this.#searches[seeds.length - 1]?.fit(this.#clean, seeds, noise, steps, begin) ?? null;
  }

  /** Noise as the variance of a complex sample. */
  #noiseOf(band: BandSignal): number {
    const [re, im] = [band.work.take(band.count), band.work.take(band.count)];
    for (let n = 0; n < band.count; n++) {
      re[n] = (band.re[n] ?? 0) * hann(n, band.count);
      im[n] = (band.im[n] ?? 0) * hann(n, band.count);
    }
    const rest = { ...band, re, im };
    return Math.max(
      floor * this.#energy,
      meanByMedian(periodogram(rest, this.#seed, noiseFromHz, noiseToHz)),
    );
  }
}

const better = (one: WaveringFit | null, other: WaveringFit | null): WaveringFit | null =>
  one && (!other || one.evidence <= other.evidence) ? one : other;

/** The two lines of a fit, lower first, if they are as far apart as a pair and both last. */
function twoOf(
  fit: WaveringFit,
  hz: number,
  noise: number,
): readonly [WaveringLine, WaveringLine] | null {
  const [a, b] = fit.lines;
  if (!a || !b) return null;
  const apart = Math.abs(a.offsetHz - b.offsetHz);
  const cents = apart / centsOf(hz);
  const belowDb = Math.abs(10 * Math.log10(a.latePower / b.latePower));
  const wholeDb = Math.abs(10 * Math.log10(a.power / b.power));
  const isSideband = Math.min(belowDb, wholeDb) > sidebandDb;
  const deepest = fit.restPower < explained * noise ? weakestDb : weakestDoubtfulDb;
  const two =
    cents > nearestCents &&
    cents < furthestCents &&
    apart > nearestHz &&
    belowDb < deepest &&
    !isSideband;
  return two ? (a.offsetHz < b.offsetHz ? [a, b] : [b, a]) : null;
}
