// A sound through a lossy codec and back, where ffmpeg is installed.
import { spawnSync } from 'node:child_process';
import type { Sound } from './hear-take';

export const hasFfmpeg = (): boolean => spawnSync('ffmpeg', ['-version']).status === 0;

export type Codec = 'aac' | 'opus';
const containers = { aac: ['aac', 'adts'], opus: ['libopus', 'ogg'] } as const;

/**
 * `sounds` (all at one rate) coded one after another at 64 kbit/s and decoded again; the codec's own delay stays in.
 * They are joined for speed, each with its own silence around it.
 */
export function coded(sounds: readonly Sound[], codec: Codec): readonly Sound[] {
  const sampleRate = sounds[0]?.sampleRate ?? 44100;
  const joined = new Float32Array(sounds.reduce((sum, { samples }) => sum + samples.length, 0));
  let at = 0;
  const places = sounds.map(({ samples }) => {
    joined.set(samples, at);
    at += samples.length;
    return { from: at - samples.length, to: at };
  });
  const raw = ['-f', 'f32le', '-ar', String(sampleRate), '-ac', '1'];
  const [name, container] = containers[codec];
  const quiet = ['-hide_banner', '-loglevel', 'error'];
  const bytes = Buffer.from(joined.buffer);
  const packed = run(
    [...quiet, ...raw, '-i', '-', '-c:a', name, '-b:a', '64k', '-f', container, '-'],
    bytes,
  );
  const back = run([...quiet, '-i', '-', ...raw, '-'], packed);
  const samples = new Float32Array(new Uint8Array(back).buffer, 0, back.byteLength >> 2);
  return places.map(({ from, to }) => ({ samples: samples.slice(from, to), sampleRate }));
}

function run(words: readonly string[], input: Buffer): Buffer {
  const { stdout, status, stderr } = spawnSync('ffmpeg', [...words], { input, maxBuffer: 2 ** 30 });
  if (status !== 0) throw new Error(`ffmpeg: ${stderr.toString().trim()}`);
  return stdout;
}
