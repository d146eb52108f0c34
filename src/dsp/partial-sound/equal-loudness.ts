// Loudness of a single line, and tones that are as loud as it.
import { softEnds } from './sound-of-track';

/** The filters of ITU-R BS.1770-4, annex 1, tables 1 and 2, for 48 kHz: head and low cut. */
const stages = [
  {
    b: [1.53512485958697, -2.69169618940638, 1.19839281085285],
    a: [1, -1.69065929318241, 0.73248077421585],
  },
  { b: [1, -2, 1], a: [1, -1.99004745483398, 0.99007225036621] },
] as const;
/** The rate those tables are for, Hz. */
const tabledRate = 48000;
/**
 * Everything is played this loud: root mean square after that weighting, of full scale (−20 dB leaves room for how a
 * decay begins; this and the next two are chosen, no source).
 */
const playedLevel = 0.1;
const highestPeak = 0.9;
/** A target tone comes in this softly, s. */
const softStart = 0.04;

/** By how much the weighting changes the amplitude of a line at `hz`. */
export function weightAt(hz: number): number {
  const turn = (2 * Math.PI * hz) / tabledRate;
  const size = ([p, q, r]: readonly [number, number, number]): number =>
    Math.hypot(
      p + q * Math.cos(turn) + r * Math.cos(2 * turn),
      q * Math.sin(turn) + r * Math.sin(2 * turn),
    );
  return stages.reduce((product, { b, a }) => (product * size(b)) / size(a), 1);
}

const rootMeanSquare = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / Math.max(1, samples.length));

const withinScale = (samples: Float32Array<ArrayBuffer>): Float32Array<ArrayBuffer> => {
  const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return peak > highestPeak ? samples.map((value) => (value * highestPeak) / peak) : samples;
};

/** A line around `hz`, made as loud as all others; silence stays silence. */
export function equallyLoud(samples: Float32Array<ArrayBuffer>, hz: number) {
  const loud = rootMeanSquare(samples) * weightAt(hz);
  if (loud <= 0) return samples;
  return withinScale(samples.map((value) => (value * playedLevel) / loud));
}

/** Amplitude of a held tone of `hz` that is as loud as all others. */
export const heldAmplitude = (hz: number): number =>
  Math.min(highestPeak, (Math.SQRT2 * playedLevel) / weightAt(hz));

/** A tone of `hz` that fades with a time constant of `decaySeconds` (infinite: held), as loud as all others. */
export function targetTone(hz: number, seconds: number, decaySeconds: number, rate: number) {
  const tone = Float32Array.from({ length: Math.floor(seconds * rate) }, (_, n) => {
    const time = n / rate;
    const fade = Math.exp(-time / decaySeconds) * softEnds(time, seconds, softStart);
    return fade * Math.sin(2 * Math.PI * hz * time);
  });
  return equallyLoud(tone, hz);
}

/** Two sounds at once, neither louder than the other, as long as the first one. */
export const together = (one: Float32Array<ArrayBuffer>, other: Float32Array<ArrayBuffer>) =>
  withinScale(one.map((value, n) => (n < other.length ? value + other[n] : value)));
