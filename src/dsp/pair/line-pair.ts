// Whether one line or two ring close together, and where each is.

import type { MeasuredLine } from '../line/measure-line';
import { type Window, windowOf } from '../spectrum/band-window';
import { leadSeconds, type SpectralLine, type StrikeSpectrum } from '../spectrum/strike-spectrum';
import { PairSearch } from './pair-search';
import type { WaveringLine } from './wavering-lines';

/** Half of the band's width, Hz; its inner half is flat. */
const bandHz = 84;
/** Nothing earlier is looked at, s: before, the strike still blooms and glides. */
const earliestSeconds = 0.06;
/** A shorter band tells nothing, samples. */
const fewestSamples = 40;

/**
 * Two lines around the spectral line `line` in `window`, lower first, or null if one explains the sound.
 * Both models let every amplitude waver (energy exchange); their evidence decides (MacKay, Information Theory,
 * Inference, and Learning Algorithms, 2003, ch. 27–28).
 */
export function measurePair(
  spectrum: StrikeSpectrum,
  line: SpectralLine,
  others: readonly SpectralLine[],
  window: Window,
): Pair | null {
  const mark = spectrum.work.mark();
  const pair = pairInBand(spectrum, line, others, window);
  spectrum.work.release(mark);
  return pair;
}

interface Pair {
  readonly lines: readonly [MeasuredLine, MeasuredLine];
}

function pairInBand(
  spectrum: StrikeSpectrum,
  line: SpectralLine,
  others: readonly SpectralLine[],
  window: Window,
): Pair | null {
  const whole = spectrum.band(line.hz, bandHz);
  const from = Math.max(window.from, earliestSeconds);
  const band = windowOf(whole, { from, to: window.to });
  if (band.count < fewestSamples) return null;
  const start = Math.ceil((leadSeconds + from) * band.rate) / band.rate - leadSeconds;
  const found = new PairSearch(band, line, others, start).run();
  if (!found) return null;
  const [low, high] = found.lines;
  return { lines: [resultOf(low, band.centreHz, found), resultOf(high, band.centreHz, found)] };
}

function resultOf(
  line: WaveringLine,
  centreHz: number,
  { unexplained, misfit }: Pick<MeasuredLine, 'unexplained' | 'misfit'>,
): MeasuredLine {
  return {
    hz: centreHz + line.offsetHz,
    sigmaHz: line.sigmaHz,
    decaySeconds: line.decayRate > 0.05 ? 1 / line.decayRate : 20,
    amplitude: line.amplitude,
    glideHz: line.glideHz,
    unexplained,
    misfit,
  };
}
