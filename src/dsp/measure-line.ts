// Measures one audible line of a strike in its own narrow band, together with the lines beside it.
import { type DampedFit, fitDampedLines } from './fit-damped-lines';
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
  /** Part of the band's energy that is no steady decaying line. */
  readonly unexplained: number;
}

/** Gain in residual energy, times the number of samples, from which a glide is believed. */
const glideGain = 6;
/** A glide may make the frequency this much less certain, no more. */
const mostSigmaForGlide = 4;

const bandHalfWidth = (hz: number): number => Math.min(90, 0.3 * hz);

/** Settled frequency, error, decay and level of `line`; `others` inside its band are fitted with it. */
export function measureLine(
  spectrum: StrikeSpectrum,
  line: SpectralLine,
  others: readonly SpectralLine[],
  window: Window,
): MeasuredLine | null {
  const halfWidth = bandHalfWidth(line.hz);
  const band = spectrum.band(line.hz, halfWidth);
  const neighbours = others
    .filter(
      (other) =>
        other !== line &&
        Math.abs(other.hz - line.hz) < halfWidth &&
        other.amplitude > line.amplitude / 60,
    )
    .slice(0, 3);
  const part = windowOf(band, window);
  const seeds = [line, ...neighbours].map((each) => each.hz - band.centreHz);
  const fit = bestFit(part, seeds);
  const main = fit?.lines[0];
  if (!fit || !main) return null;
  return {
    hz: band.centreHz + main.offsetHz,
    sigmaHz: main.sigmaHz,
    decaySeconds: main.decayRate > 0.05 ? 1 / main.decayRate : 20,
    amplitude: main.amplitude,
    unexplained: fit.unexplained,
  };
}

/**
 * The fit with a glide only where the sound asks for it: the glide costs certainty, and without need
 * it lets the fit wander. Where several lines cannot be told apart, the main one alone.
 */
function bestFit(part: Band, seeds: readonly number[]): DampedFit | null {
  const plain = fitDampedLines(part, seeds, false);
  const gliding = fitDampedLines(part, seeds, true);
  if (!plain || !gliding) return gliding ?? plain ?? fitDampedLines(part, seeds.slice(0, 1), false);
  const needed = gliding.unexplained < plain.unexplained * (1 - glideGain / part.count);
  const sigma = (fit: DampedFit): number => fit.lines[0]?.sigmaHz ?? Number.POSITIVE_INFINITY;
  return needed && sigma(gliding) < mostSigmaForGlide * sigma(plain) ? gliding : plain;
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

/** Root mean square amplitude of the band around `hz` in a stretch, linear. */
export function amplitudeDuring(spectrum: StrikeSpectrum, hz: number, window: Window): number {
  const band = spectrum.band(hz, bandHalfWidth(hz));
  const part = windowOf(band, window);
  let energy = 0;
  for (let n = 0; n < part.count; n++) energy += (part.re[n] ?? 0) ** 2 + (part.im[n] ?? 0) ** 2;
  return Math.sqrt(energy / Math.max(1, part.count));
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
