// Sentences spoken by espeak-ng, where it is installed.
import { spawnSync } from 'node:child_process';
import { readWav } from '../../src/dsp/read-wav';
import { resampled } from '../benchmarks/strikes/garage';

export const missingSpeech = 'There is no speech: espeak-ng is not installed.';
export const hasSpeech = (): boolean => spawnSync('espeak-ng', ['--version']).status === 0;

const openings = [
  'Strike the middle of',
  'Can you hear',
  'Put down',
  'Listen to',
  'He walked past',
];
const things = [
  'the second note',
  'that old rim',
  'a rubber hammer',
  'the tenor by the door',
  'our van',
];
const endings = [
  'before the rain comes.',
  'and tell me what you think!',
  'once more, please?',
  'because it went flat on Tuesday.',
  'while the others count to four: one, two, three, four.',
  'until nobody is talking.',
  'or bring the sticks back.',
];

/** Sentence number `n`, 0 to 174; neighbours differ in all parts. */
export const sentence = (n: number): string =>
  [openings[n % 5], things[(n + Math.floor(n / 5)) % 5], endings[n % 7]].join(' ');

export interface Spoken {
  readonly name: string;
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}

/** `text` spoken by `voice` (as espeak-ng names it) at 44.1 kHz. */
export function spoken(text: string, voice: string): Spoken {
  const { stdout, status, stderr } = spawnSync('espeak-ng', ['-v', voice, '--stdout', text]);
  const wav = readWav(new Uint8Array(stdout).buffer);
  if (status !== 0 || wav.kind === 'not-wav') throw new Error(`espeak-ng: ${stderr.toString()}`);
  const sampleRate = 44100;
  const { samples } = resampled(wav, wav.sampleRate / sampleRate);
  return { name: `${voice}: ${text}`, samples: new Float32Array(samples), sampleRate };
}
