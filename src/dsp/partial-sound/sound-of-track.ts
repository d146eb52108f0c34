// A track made audible: as it was, or slower at the same pitch.
import { type LineTrack, trackStep, valueAt } from './line-track';

/** Sound fades in and out over this time, s (chosen, no source). */
const softly = 0.006;

/**
 * The line of `track` as samples at `rate` Hz, `slower` times as long. At 1 it is what the filter let through. Slower,
 * amplitude and pitch take the same course in more time: pitch, glide in cents and so the beats against another tone
 * stay; swelling, glide and decay, and the beating of two lines inside it, take longer.
 */
export function soundOfTrack(
  track: LineTrack,
  rate: number,
  slower = 1,
): Float32Array<ArrayBuffer> {
  const seconds = (track.turns.length - 1) * trackStep * slower;
  const samples = new Float32Array(Math.floor(seconds * rate));
  const amplitude = track.re.map((re, n) => Math.hypot(re, track.im[n]));
  const turned = unwrapped(track);
  for (let n = 0; n < samples.length; n++) {
    const time = n / rate;
    const place = time / slower / trackStep;
    const value =
      slower === 1
        ? asItWas(track, time, place)
        : valueAt(amplitude, place) *
          Math.cos(2 * Math.PI * (track.hz * time + slower * valueAt(turned, place)));
    samples[n] = value * softEnds(time, seconds);
  }
  return samples;
}

/** 0…1: rises and falls like a quarter of a sine, so that nothing clicks. */
export function softEnds(time: number, seconds: number, soft = softly): number {
  const open = Math.max(0, Math.min(1, time / soft, (seconds - time) / soft));
  return Math.sin((Math.PI / 2) * open) ** 2;
}

function asItWas(track: LineTrack, time: number, place: number): number {
  const angle = 2 * Math.PI * (track.hz * time + valueAt(track.turns, place));
  return smoothAt(track.re, place) * Math.cos(angle) - smoothAt(track.im, place) * Math.sin(angle);
}

/** Between the points on a cubic through four of them (Catmull and Rom, 1974). */
function smoothAt(values: Float64Array, place: number): number {
  const low = Math.floor(place);
  const t = place - low;
  const at = (n: number): number => values[Math.max(0, Math.min(values.length - 1, n))];
  const [a, b, c, d] = [at(low - 1), at(low), at(low + 1), at(low + 2)];
  return b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}

/** All phase beyond the steady line, in turns, without jumps. */
function unwrapped({ turns, re, im }: LineTrack): Float64Array {
  const all = new Float64Array(turns.length);
  let before = 0;
  for (let n = 0; n < turns.length; n++) {
    const own = Math.atan2(im[n], re[n]) / (2 * Math.PI);
    const whole = n === 0 ? 0 : Math.round(before - own);
    before = own + whole;
    all[n] = before + turns[n];
  }
  return all;
}
