// The loudness course of a struck note: up at once, then down. Speech, wind and music rise late or again, hum stays.
import { type Window, windowOf } from '../spectrum/band-window';
import type { Band } from '../spectrum/strike-spectrum';

/** From 70 ms on a note falls at least that fast (a bass that rings for 5 s), dB/s … */
const slowestFall = 10.5;
/** … a bass note not even that: its beating and blooming are slow against the time that is heard of it. */
const slowestFallOfBass = 4;
/** … which shows only in sound of this length, for partials exchange energy and two lines at the octave beat, s. */
const longEnough = 0.5;
/** The first moments of a line, and the time in which a voice has swelled, s after the onset. */
const first: Window = { from: 0, to: 0.02 };
const swollen: Window = { from: 0.06, to: 0.1 };
const swellSeconds = 0.07;

const decibel = (ratio: number): number => 10 * Math.log10(ratio + 1e-20);

/**
 * Whether the loudness from `onset` to `end` (samples) falls as a struck note's does. Only the whole time says so:
 * in between two lines at the octave that are louder than the fundamental beat as deep as they like.
 * `roomDb` is the level of the room's own noise, dB of full scale (root mean square).
 */
export function fallsAway(
  samples: Float32Array,
  onset: number,
  end: number,
  sampleRate: number,
  roomDb: number,
  isBass: boolean,
): boolean {
  const at = (seconds: number): number => Math.round(seconds * sampleRate);
  if (end - onset < at(longEnough)) return true;
  const roomPower = 10 ** (roomDb / 10);
  const early = meanPower(samples, onset + at(0.02), onset + at(0.12)) - roomPower;
  const late = meanPower(samples, end - at(0.12), end - at(0.01)) - roomPower;
  const apart = (end - onset) / sampleRate - 0.135;
  return late <= 0 || decibel(early / late) >= (isBass ? slowestFallOfBass : slowestFall) * apart;
}

/**
 * How much louder the line in `band` is 60 to 100 ms after the onset than in its first 20 ms, over what a line with the
 * time constant `decaySeconds` would be, dB. A voice swells. A note's fundamental falls from the start and swells by an
 * energy exchange only; the octave, which blooms, lies in another band.
 */
export function swellDb(band: Band, decaySeconds: number): number {
  const [early, later] = [first, swollen].map((window) => bandPower(windowOf(band, window)));
  const rise = decibel(((later ?? 0) + 1e-14) / ((early ?? 0) + 1e-14));
  return rise + decibel(Math.E) * 2 * (swellSeconds / decaySeconds);
}

function bandPower({ re, im, count }: Band): number {
  let sum = 0;
  for (let n = 0; n < count; n++) sum += (re[n] ?? 0) ** 2 + (im[n] ?? 0) ** 2;
  return sum / Math.max(1, count);
}

function meanPower(samples: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return sum / Math.max(1, to - from);
}
