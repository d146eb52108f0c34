// Rolls on a pan: strokes that follow each other too fast to be measured.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import type { RealStrike } from '../synthetic-sounds/real-strike';
import { placed } from '../synthetic-sounds/sounds';
import type { Stroke } from './played-lead';

export interface Roll {
  readonly seed: number;
  readonly strokes: readonly Stroke[];
}

/** 6 to 15 strokes on one of `notes`, or on two in turn, 6 to 14 a second at a pace that wavers by a tenth; levels within 9 dB. */
export function rollOf(seed: number, notes: readonly number[]): Roll {
  const random = seededRandom(seed * 37 + 11);
  const pause = 1 / between(random, 6, 14);
  const anyOf = (): number => notes[Math.floor(random() * notes.length)] ?? 60;
  const first = anyOf();
  const second = random() < 0.5 ? first : anyOf();
  const count = 6 + Math.floor(10 * random());
  let at = 0.4;
  const strokes = Array.from({ length: count }, (_, k) => {
    const stroke = { at, note: k % 2 === 0 ? first : second, level: between(random, 0.35, 1) };
    at += pause * between(random, 0.9, 1.1);
    return stroke;
  });
  return { seed, strokes };
}

/** The roll with recorded strikes in place of its notes. */
export function rollOfRecordings(
  { seed, strokes }: Roll,
  recordings: readonly RealStrike[],
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const [first, second] = [seed, seed + strokes.length].map(
    (n) => recordings[n % recordings.length],
  );
  if (!first || !second) throw new Error('no recordings');
  const sounds = strokes.map(({ at, level }, k) => ({
    at,
    samples: (k % 2 === 0 ? first : second).samples.map((value) => 0.4 * level * value),
  }));
  return placed(sounds, { sampleRate, seconds: 1.5 + (strokes.at(-1)?.at ?? 0) });
}
