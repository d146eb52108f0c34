// What the fake microphone plays in most browser tests: a flat D5, struck six times.
import { leadNote, placed } from '../synthetic-sounds/sounds';

const sampleRate = 44_100;
const strikes = 6;
const apart = 1.6;

/** Six strikes from `first` (s) on: three must agree, and a busy machine may lose some. */
export function sixStrikes(first = 1.5) {
  const note = leadNote(
    { target: 440 * 2 ** (5 / 12), fundamental: -9, octave: -5, third: 2, thirdTimes: 4 },
    sampleRate,
  );
  const times = Array.from({ length: strikes }, (_, n) => first + n * apart);
  const samples = placed(
    times.map((at) => ({ at, samples: note })),
    { sampleRate, seconds: first + strikes * apart + 0.9 },
  );
  return { samples, sampleRate };
}
