// Measures one audible line of a strike in its own narrow band, freed from the lines beside it.
import { mean, meanByMedian, periodogram } from './band-noise';
import {
  type BandSignal,
  type DampedFit,
  type DampedLine,
  fitDampedLines,
} from './fit-damped-lines';
import { envelopeHz, type SettledFrequency, settledFrequency } from './settled-frequency';
import { type Band, leadSeconds, type SpectralLine, type StrikeSpectrum } from './strike-spectrum';

/** A measuring window, seconds after the onset. */
export interface Window {
  readonly from: number;
  readonly to: number;
}

export interface MeasuredLine {
  readonly hz: number;
  readonly sigmaHz: number;
  readonly decaySeconds: number;
  /** Amplitude at the start of the window, linear. */
  readonly amplitude: number;
  /** Frequency at the strike above the settled one, Hz; 0 where the line does not glide. */
  readonly glideHz: number;
  /** Part of the line's energy that is no line. */
  readonly unexplained: number;
  /** What is left, as a multiple of the noise beside the line: about 1 for one line alone. */
  readonly misfit: number;
}

/** The strike's own edge rings on in a band for this long, times its half width. */
const edgeTurns = 2.7;
/** Lines closer than this to each other share their envelopes' bandwidth, Hz. */
const nearHz = envelopeHz + 4;
const mostNeighbours = 4;
/** Neighbours this much weaker than the line are left alone. */
const weakestNeighbour = 1 / 60;
/** A neighbour's fit that strays further from where it was seen has found something else, Hz. */
const largestStray = 6;
/** Lines nearby are believed in when the line without them leaves this many times more. */
const neighbourGain = 2;
/**
 * The priors of glide and swing are wider than what is met, so that a fit by phase states too large an error:
 * factor by which 95 % of the ear's benchmark lie within two errors.
 */
const phaseSigma = 0.77;
/** A plain decaying line leaves no more near it than the noise beside it and this many deviations. */
const plainDeviations = 3.5;

const bandHalfWidth = (hz: number): number => Math.min(90, 0.85 * hz);

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
  const alone = settle(band, seed, [], far, start);
  if (near.length === 0) return alone && resultOf(alone, band.centreHz);
  // A glide and an energy exchange put sidebands where a neighbour could be: only what they cannot explain counts.
  const apart = settle(band, seed, near, far, start);
  const chosen =
    apart && (!alone || neighbourGain * apart.unexplained < alone.unexplained) ? apart : alone;
  return chosen && resultOf(chosen, band.centreHz);
}

interface Settled {
  readonly rough: DampedLine;
  readonly offsetHz: number;
  readonly sigmaHz: number;
  readonly glideHz: number;
  readonly unexplained: number;
  readonly misfit: number;
}

const resultOf = (settled: Settled, centreHz: number): MeasuredLine => ({
  hz: centreHz + settled.offsetHz,
  sigmaHz: settled.sigmaHz,
  decaySeconds: settled.rough.decayRate > 0.05 ? 1 / settled.rough.decayRate : 20,
  amplitude: settled.rough.amplitude,
  glideHz: settled.glideHz,
  unexplained: settled.unexplained,
  misfit: settled.misfit,
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
  const parted = without(band, first.lines.slice(1));
  const found = byPhase(parted, first, start, band.centreHz);
  if (!found) return null;
  const plain = byPlainDecay(parted);
  if (far.length === 0) return plain ?? found;
  const rest = { ...parted, re: parted.re.slice(), im: parted.im.slice() };
  for (let n = 0; n < rest.count; n++) {
    rest.re[n] = (rest.re[n] ?? 0) - (found.model.re[n] ?? 0);
    rest.im[n] = (rest.im[n] ?? 0) - (found.model.im[n] ?? 0);
  }
  const others = fitDampedLines(rest, far, false);
  const believed = (others?.lines ?? []).filter(
    (line, k) => Math.abs(line.offsetHz - (far[k] ?? 0)) < largestStray && line.decayRate > -3,
  );
  if (believed.length === 0) return plain ?? found;
  const cleaned = without(parted, believed);
  return byPlainDecay(cleaned) ?? byPhase(cleaned, first, start, band.centreHz) ?? found;
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
  const sigmaHz = phaseSigma * found.sigmaHz;
  return { ...found, sigmaHz, rough: main, unexplained: found.across };
}

/** The line as a plain decaying one, if that leaves nothing but noise. */
function byPlainDecay(band: BandSignal): Settled | null {
  const fit = fitDampedLines(band, [0], false);
  const line = fit?.lines[0];
  if (!fit || !line) return null;
  const rest = without(band, [line]);
  const near = Math.min(envelopeHz, band.flatHz / 3);
  const beside = periodogram(rest, line.offsetHz, near, Math.min(38, band.flatHz));
  const close = periodogram(rest, line.offsetHz, 0, near);
  const noise = meanByMedian(beside);
  // Two of the near powers are spent on the line itself; the medium power scatters more than a mean.
  const scatter = Math.sqrt(1 / Math.max(1, close.length - 2) + 2 / Math.max(1, beside.length));
  if (mean(close) > (1 + plainDeviations * scatter) * noise) return null;
  // The fit's own error holds the noise of the whole band, oversampled; what counts is its density here.
  const perSample = (fit.unexplained * fit.energy) / (2 * band.count);
  const sigmaHz = line.sigmaHz * Math.sqrt(noise / (2 * Math.max(perSample, 1e-300)));
  return {
    rough: line,
    offsetHz: line.offsetHz,
    sigmaHz,
    glideHz: 0,
    unexplained: fit.unexplained,
    misfit: 1,
  };
}

/** The band less the given lines. */
function without(band: BandSignal, lines: readonly DampedLine[]): BandSignal {
  if (lines.length === 0) return band;
  const re = band.re.slice();
  const im = band.im.slice();
  for (const { amplitude, decayRate, phase, offsetHz } of lines) {
    for (let n = 0; n < band.count; n++) {
      const t = n / band.rate;
      const a = amplitude * Math.exp(-decayRate * t);
      const angle = phase + 2 * Math.PI * offsetHz * t;
      re[n] = (re[n] ?? 0) - a * Math.cos(angle);
      im[n] = (im[n] ?? 0) - a * Math.sin(angle);
    }
  }
  return { ...band, re, im };
}

/** Mean frequency in a short stretch of the band, weighted by energy (for the glide), Hz. */
export function frequencyDuring(
  spectrum: StrikeSpectrum,
  hz: number,
  window: Window,
): number | null {
  const band = spectrum.band(hz, bandHalfWidth(hz));
  const part = windowOf(band, window);
  let re = 0;
  let im = 0;
  for (let n = 1; n < part.count; n++) {
    const [a, b] = [part.re[n] ?? 0, part.im[n] ?? 0];
    const [c, d] = [part.re[n - 1] ?? 0, part.im[n - 1] ?? 0];
    re += a * c + b * d;
    im += b * c - a * d;
  }
  if (re === 0 && im === 0) return null;
  return band.centreHz + (Math.atan2(im, re) / (2 * Math.PI)) * part.rate;
}

function windowOf(band: Band, window: Window): Band {
  const from = Math.max(0, Math.ceil((leadSeconds + window.from) * band.rate));
  const to = Math.min(band.count, Math.floor((leadSeconds + window.to) * band.rate));
  return {
    ...band,
    re: band.re.subarray(from, Math.max(from, to)),
    im: band.im.subarray(from, Math.max(from, to)),
    count: Math.max(0, to - from),
  };
}
