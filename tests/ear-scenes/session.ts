// A long working session: strikes at random gaps in a quiet, noisy room, made block by block.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import { pinkNoise } from '../sounds/noise';
import { strikeScene } from '../sounds/scene';

export const sessionRate = 44100;
export const sessionBlock = 4096;

export interface SessionStrike {
  /** Which of the session's few sounds is played. */
  readonly kind: number;
  readonly at: number;
}

export interface Session {
  readonly strikes: readonly SessionStrike[];
  /** Fills `block` with the sound that begins at sample `first`; any order, no memory. */
  readonly fill: (block: Float32Array, first: number) => void;
}

const kinds = 4;
/** Deviation of the noise between the strikes. */
const roomNoise = 3e-4;

/** `seconds` of session with gaps of `shortest` to `longest` seconds; the same for the same seed. */
export function sessionOf(
  seed: number,
  { seconds, shortest, longest }: { seconds: number; shortest: number; longest: number },
): Session {
  const random = seededRandom(seed);
  const sounds = Array.from({ length: kinds }, (_, n) => soundOf(seed + n));
  const room = pinkNoise(random, sessionRate, 7).map((value) => roomNoise * value);
  const strikes: SessionStrike[] = [];
  for (let at = 2; at < seconds - 4; at += between(random, shortest, longest)) {
    strikes.push({ kind: strikes.length % kinds, at });
  }
  const fill = (block: Float32Array, first: number): void => {
    for (let n = 0; n < block.length; n++) block[n] = room[(first + n) % room.length] ?? 0;
    for (const { kind, at } of strikes) {
      const sound = sounds[kind] ?? room;
      const offset = first - Math.round(at * sessionRate);
      if (offset <= -block.length || offset >= sound.length) continue;
      for (let n = Math.max(0, -offset); n < block.length; n++) {
        block[n] = (block[n] ?? 0) + (sound[offset + n] ?? 0);
      }
    }
  };
  return { strikes, fill };
}

/** One strike from its onset on, faded out at its end. */
function soundOf(seed: number): Float32Array {
  const { samples, truth } = strikeScene(seed, {
    sampleRate: sessionRate,
    seconds: 2,
    snrDb: 45,
    sympathetic: 2,
  });
  const sound = samples.slice(Math.round(truth.at * sessionRate));
  const fade = sessionRate / 2;
  for (let n = 0; n < fade; n++) {
    const at = sound.length - 1 - n;
    sound[at] = ((sound[at] ?? 0) * n) / fade;
  }
  return sound;
}
