// The one place where the benchmark calls the app's estimator of a single line.
import { type MeasuredLine, measureLine } from '../../src/dsp/line/measure-line';
import { type SpectralLine, StrikeSpectrum } from '../../src/dsp/spectrum/strike-spectrum';

/** Longest window that is asked for, with the stretch before it, s. */
const longest = 1.25;

// Accepts the length of the segment also while the constructor does not take it yet.
const Spectrum: new (sampleRate: number, longestSeconds?: number) => StrikeSpectrum =
  StrikeSpectrum;

export const spectrumFor = (sampleRate: number): StrikeSpectrum =>
  new Spectrum(sampleRate, longest);

/** What the app measures for the only line of the sound in `spectrum`, found near `line.hz`; null if it refuses. */
export function measuredByApp(
  spectrum: StrikeSpectrum,
  line: SpectralLine,
  window: { readonly from: number; readonly to: number },
): MeasuredLine | null {
  return measureLine(spectrum, line, [line], window);
}
