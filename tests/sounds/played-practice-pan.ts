// Many strikes one after another on the practice pan, in a room.
import { notesOf } from '../../src/domain/pans/layout';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { pinkNoise } from './noise';
import type { Stroke } from './played-lead';

/** Deviation of the room's pink noise, linear (−60 dB of full scale: a quiet room beside a pan, from memory). */
const roomDeviation = 1e-3;

/** `strokes` on the practice pan of `seed`, 1.5 s of room after the last one; linear superposition. */
export function playedPracticePan(
  seed: number,
  strokes: readonly Stroke[],
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const pan = createPracticePan(seed);
  const notes = notesOf(pan.layout);
  const last = Math.max(0, ...strokes.map(({ at }) => at));
  const whole = pinkNoise(seededRandom(seed + 999), sampleRate, last + 1.5).map(
    (value) => roomDeviation * value,
  );
  for (const { at, note, level } of strokes) {
    const struck = notes.find((each) => each === note);
    if (struck === undefined) throw new Error(`the practice pan has no note ${note}`);
    const first = Math.round(at * sampleRate);
    pan.strike(struck, level, sampleRate).forEach((value, n) => {
      if (first + n < whole.length) whole[first + n] = (whole[first + n] ?? 0) + value;
    });
  }
  return whole;
}
