// Measures one audible line of a strike in its own narrow band, freed from the lines beside it.
import { mean, meanByMedian, periodogram } from '../spectrum/band-noise';
import type { BandSignal } from '../spectrum/band-signal';
import { difference, withoutDamped } from '../spectrum/band-sums';
import { type Window, windowOf } from '../spectrum/band-window';
import type { DampedLine } from '../spectrum/damped-line';
import {
  type Band,
  leadSeconds,
  type SpectralLine,
  type StrikeSpectrum,
} from '../spectrum/strike-spectrum';
import { type DampedFit, fitDampedLines } from './fit-damped-lines';
import { envelopeHz } from './phase-fit';
import { type SettledFrequency, settledFrequency } from './settled-frequency';

export interface MeasuredLine {
  readonly hz: number;
  readonly sigmaHz: number;
  readonly decaySeconds: number;
  /** Amplitude at the start of the window, linear. */
  readonly amplitude: number;
  /** Frequency at the strike above the settled one, Hz; 0 where the line does not glide. */
  readonly glideHz: number;
  /** Fraction of the line's energy that no line explains. */
  readonly unexplained: number;
  /** Where the part of the sound begins and ends in which `hz` was heard, s after the strike. */
  readonly from: number;
  readonly to: number;
  /** What the fit leaves, as a multiple of the noise beside the line: about 1 for a single line. */
  readonly misfit: number;
  /** One line that only decays leaves nothing but noise in its window: there is nothing else to find. */
  readonly isPlain: boolean;
}

/**
 * The strike's own edge rings on in a band for this many turns of its half width (this and the limits below that name
 * nothing else: chosen, no source; seeded scenes test them).
 */
const edgeTurns = 2.7;
/** Lines closer than this to each other share their envelopes' bandwidth, Hz. */
const nearHz = envelopeHz + 4;
const mostNeighbours = 4;
/** Neighbours weaker than this fraction of the line are left alone. */
const weakestNeighbour = 1 / 60;
/** A neighbour whose fit ends farther than this from where it was seen has found something else, Hz. */
const largestStray = 6;
/** Neighbours are believed in if the fit without them leaves this many times more unexplained. */
const neighbourGain = 2;
/** If the fit without neighbours leaves less than this multiple of the noise beside the line, none are tried. */
const needsNone = 1.2;
/**
 * The priors of glide and swing are wider than what is met, so that a fit by phase states too large an error: factor
 * by which, with the exchange that `partialOf` adds, 95 % of seeded scenes lie within two errors.
 */
const phaseSigma = 0.65;
/** Not where the noise is loud against the line: it gets into the envelope by which the phases are weighed. */
const noisySigma = 2;
/**
 * Before this a glide that the noise hides would still pull a fit without one, s …
 * … unless the line is so clear that hardly a glide could hide: standard error, cents.
 */
const glideOver = 0.12;
const clearCents = 0.005;
/** Near a line that only decays no more is left than the noise beside it, give or take this many deviations. */
const plainDeviations = 3.5;

/** Half of the width of the band in which a line at `hz` is measured, Hz. */
export const bandHalfWidth = (hz: number): number => Math.min(90, 0.85 * hz);

/**
 * Settled frequency, error, decay and level of `line` in `window`; `others` inside its band are taken out.
 * A line that only decays is fitted as such, at the bound of certainty; one that glides or exchanges
 * energy by its phase. Null if nothing steady is there.
 */
export function measureLine(
  spectrum: StrikeSpectrum,
  line: SpectralLine,
  others: readonly SpectralLine[],
  window: Window,
): MeasuredLine | null {
  const mark = spectrum.work.mark();
  const measured = measureInBand(spectrum, line, others, window);
  spectrum.work.release(mark);
  return measured;
}

function measureInBand(
  spectrum: StrikeSpectrum,
  line: SpectralLine,
  others: readonly SpectralLine[],
  window: Window,
): MeasuredLine | null {
  const halfWidth = bandHalfWidth(line.hz);
  const from = Math.max(window.from, edgeTurns / halfWidth);
  const band = windowOf(spectrum.band(line.hz, halfWidth), { from, to: window.to });
  const start = Math.ceil((leadSeconds + from) * band.rate) / band.rate - leadSeconds;
  const neighbours = others
    .filter((other) => {
      const away = Math.abs(other.hz - line.hz);
      return (
        other !== line && away < halfWidth && other.amplitude > line.amplitude * weakestNeighbour
      );
    })
    .slice(0, mostNeighbours)
    .map((other) => other.hz - band.centreHz);
  const seed = line.hz - band.centreHz;
  const isNear = (offset: number): boolean => Math.abs(offset - seed) <= nearHz;
  const far = neighbours.filter((offset) => !isNear(offset));
  const near = neighbours.filter(isNear);
  // Each attempt gives its arrays back: what is settled is numbers only.
  const settledWith = (taken: readonly number[]): Settled | null => {
    const mark = band.work.mark();
    const settled = settle(band, seed, taken, far, start);
    band.work.release(mark);
    return settled;
  };
  const chosen = near.length === 0 ? settledWith([]) : settleAmong(near, settledWith);
  if (!chosen) return null;
  const result = resultOf(chosen, band.centreHz, start + band.count / band.rate);
  // What was fitted along may be a second line of the same partial.
  return near.length === 0 ? result : { ...result, isPlain: false };
}

/**
 * The line with as few of `near` (strongest first) fitted along as explain as much as all of them, or with none: a
 * glide and an energy exchange put sidebands where a neighbour could be, and a sideband that is fitted as a line pulls
 * the line off its place.
 */
function settleAmong(
  near: readonly number[],
  settledWith: (taken: readonly number[]) => Settled | null,
): Settled | null {
  const alone = settledWith([]);
  const isBetter = (one: Settled | null, other: Settled | null): one is Settled =>
    one !== null && (!other || neighbourGain * one.unexplained < other.unexplained);
  if (alone && alone.misfit < needsNone) return alone;
  const all = settledWith(near);
  if (!isBetter(all, alone)) return alone;
  for (let count = 1; count < near.length; count++) {
    const few = settledWith(near.slice(0, count));
    if (few && !isBetter(all, few)) return few;
  }
  return all;
}

interface Settled {
  readonly rough: DampedLine;
  readonly offsetHz: number;
  readonly from: number;
  readonly sigmaHz: number;
  readonly glideHz: number;
  readonly unexplained: number;
  readonly misfit: number;
  readonly isPlain: boolean;
}

const resultOf = (settled: Settled, centreHz: number, to: number): MeasuredLine => ({
  hz: centreHz + settled.offsetHz,
  sigmaHz: settled.sigmaHz,
  decaySeconds: settled.rough.decayRate > 0.05 ? 1 / settled.rough.decayRate : 20,
  amplitude: settled.rough.amplitude,
  glideHz: settled.glideHz,
  unexplained: settled.unexplained,
  misfit: settled.misfit,
  from: settled.from,
  to,
  isPlain: settled.isPlain,
});

/** The line at `seed` with the lines `near` it fitted along with it and those `far` from it taken out. */
function settle(
  band: Band,
  seed: number,
  near: readonly number[],
  far: readonly number[],
  start: number,
): Settled | null {
  const seeds = [seed, ...near];
  const first = fitDampedLines(band, seeds, true) ?? fitDampedLines(band, seeds, false);
  if (!first) return null;
  const parted = withoutDamped(band, first.lines.slice(1));
  const plain = byPlainDecay(parted, start, band.centreHz);
  if (plain && far.length === 0) return plain;
  const found = byPhase(parted, first, start, band.centreHz);
  if (!found || far.length === 0) return found;
  const rest = difference(parted, found.model);
  const others = fitDampedLines(rest, far, false);
  const believed = (others?.lines ?? []).filter(
    (line, k) => Math.abs(line.offsetHz - far[k]) < largestStray && line.decayRate > -3,
  );
  if (believed.length === 0) return plain ?? found;
  const cleaned = withoutDamped(parted, believed);
  return (
    byPlainDecay(cleaned, start, band.centreHz) ??
    byPhase(cleaned, first, start, band.centreHz) ??
    found
  );
}

function byPhase(
  band: BandSignal,
  rough: DampedFit,
  start: number,
  centreHz: number,
): (Settled & { readonly model: SettledFrequency['model'] }) | null {
  const main = rough.lines[0];
  const found = main && settledFrequency(band, { ...main, glide: rough.glide }, start, centreHz);
  if (!found) return null;
  const sigmaHz = phaseSigma * (1 + noisySigma * Math.sqrt(found.across)) * found.sigmaHz;
  return { ...found, sigmaHz, rough: main, unexplained: found.across, isPlain: false };
}

/** The line as a plain decaying one, if that leaves nothing but noise and no glide can hide in the noise. */
function byPlainDecay(band: BandSignal, start: number, centreHz: number): Settled | null {
  const fit = fitDampedLines(band, [0], false);
  const line = fit?.lines[0];
  if (!fit || !line) return null;
  const mark = band.work.mark();
  const rest = withoutDamped(band, [line]);
  const near = Math.min(envelopeHz, band.flatHz / 3);
  const beside = periodogram(rest, line.offsetHz, near, Math.min(38, band.flatHz));
  const close = periodogram(rest, line.offsetHz, 0, near);
  band.work.release(mark);
  const noise = meanByMedian(beside);
  // Two of the nearby powers are spent on the line itself; a median power scatters more than a mean.
  const scatter = Math.sqrt(1 / Math.max(1, close.length - 2) + 2 / Math.max(1, beside.length));
  if (mean(close) > (1 + plainDeviations * scatter) * noise) return null;
  // The fit's own error holds the noise of the whole band, oversampled; what counts is its density here.
  const perSample = (fit.unexplained * fit.energy) / (2 * band.count);
  const sigmaHz = line.sigmaHz * Math.sqrt(noise / (2 * Math.max(perSample, 1e-300)));
  const clearHz = (clearCents * Math.LN2 * (centreHz + line.offsetHz)) / 1200;
  if (start < glideOver && sigmaHz > clearHz) return null;
  return {
    rough: line,
    offsetHz: line.offsetHz,
    from: start,
    sigmaHz,
    glideHz: 0,
    unexplained: fit.unexplained,
    misfit: 1,
    isPlain: true,
  };
}
