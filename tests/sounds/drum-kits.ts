// Recorded drums of a General-MIDI bank that is installed on the machine, each key as a player hears it.
import { existsSync, readFileSync } from 'node:fs';
import { BasicSoundBank, SoundBankLoader } from 'spessasynth_core';
import { resampled } from '../benchmarks/strikes/garage';

/** Where Debian's fluid-soundfont-gm (MIT licence) puts its bank; another one may be named in DRUMS. */
const bankFile = process.env['DRUMS'] ?? '/usr/share/sounds/sf2/FluidR3_GM.sf2';

export const missingDrums = (): string =>
  `There is no bank of drums at ${bankFile}: install fluid-soundfont-gm, or name an sf2 file in DRUMS.`;

export interface DrumSound {
  /** Sample and key, for instance "High Conga 62". */
  readonly name: string;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

/** Numbers of the SoundFont 2.04 generators that are needed. */
const coarseTune = 51;
const fineTune = 52;
const scaleTuning = 56;
const overridingRootKey = 58;
/** General MIDI's drums, and what kits add below and above them. */
const lowestKey = 27;
const highestKey = 87;
/** Longer sounds are cut off, s. */
const longest = 3;

/** Every drum of every kit once (its left channel), at the pitch of the first key that plays it; null without a bank. */
export async function drumSounds(): Promise<readonly DrumSound[] | null> {
  if (!existsSync(bankFile)) return null;
  await BasicSoundBank.isSF3DecoderReady;
  const bank = SoundBankLoader.fromArrayBuffer(new Uint8Array(readFileSync(bankFile)).buffer);
  const found = new Map<string, DrumSound>();
  for (const preset of bank.presets.filter((each) => each.isGMGSDrum)) {
    for (const { instrument } of preset.zones) {
      for (const zone of instrument?.zones ?? []) {
        const { sample } = zone;
        if (!sample || /\(R/.test(sample.name)) continue;
        const low = Math.max(lowestKey, zone.keyRange.min);
        if (low > Math.min(highestKey, zone.keyRange.max)) continue;
        const value = (type: number): number | null => zone.getGenerator<null>(type as never, null);
        const root = value(overridingRootKey) ?? sample.originalKey;
        const steps = ((low - root) * (value(scaleTuning) ?? 100)) / 100 + (value(coarseTune) ?? 0);
        const factor = 2 ** ((steps + (value(fineTune) ?? 0) / 100) / 12);
        const name = `${sample.name.replace(/\(L\)?/, '').trim()} ${low}`;
        if (found.has(name) || factor > 4 || factor < 0.25) continue;
        const { sampleRate } = sample;
        const most = Math.round(longest * sampleRate * factor);
        const plain = {
          samples: new Float32Array(sample.getAudioData()).slice(0, most),
          sampleRate,
        };
        const played = Math.abs(factor - 1) < 1e-4 ? plain : resampled(plain, factor);
        found.set(name, { name, samples: new Float32Array(played.samples), sampleRate });
      }
    }
  }
  return [...found.values()];
}
