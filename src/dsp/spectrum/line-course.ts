// The course of a line in time: before the strike, in its first moments, and later.
// Times and levels are chosen, no source; they are what the fitted weights of `ear-weights` build on.
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { type HannSum, hannSum } from './hann-sum';
import type { SpectralLine } from './strike-spectrum';

/** A line with its course in time; amplitudes are linear. */
export interface TimedLine {
  readonly hz: number;
  /** In the first moments after the onset. */
  readonly early: number;
  /** The same in its first four turns only, where the first moments are longer: bass notes. */
  readonly first: number;
  /** What the strike added in its very first moments: long enough for three turns, too short for a bloom or a glide. */
  readonly touch: number;
  /** In the measuring window. */
  readonly settled: number;
  /** Just before the onset. */
  readonly before: number;
  /** What the strike added at once: a note struck again may cancel its own ringing as well as join it. */
  readonly added: number;
}

/** Length of the first moments, s, and in turns of the line where that is longer. */
const earlySeconds = 0.028;
const earlyTurns = 7;
const firstTurns = 4;
const touchSeconds = 0.008;
const touchTurns = 3;

/** A ringing line fades to about this part from the one moment to the other (time constant 0.25 s). */
const fadedBetween = 0.86;

/** In the first moments two lines closer than this cannot be told apart, Hz. */
export const blurOf = (hz: number): number => 1.5 / Math.max(earlySeconds, earlyTurns / hz);

/** A line this close, Hz, to one that is stronger by this much, dB, is its sideband. */
const sidebandHz = 26;
const sidebandDb = 9;

/** Whether `line` lies beside a far stronger one, as what energy exchange and glide leave there does. */
export const isSideband = (lines: readonly TimedLine[], line: TimedLine): boolean =>
  lines.some(
    (other) =>
      Math.abs(other.hz - line.hz) < sidebandHz &&
      dbOfAmplitude(other.settled / line.settled, 1e-6) > sidebandDb,
  );

/** The course of `line` around `onset` (sample of the segment); `touched`: the same to a millisecond. */
export function timedLine(
  segment: Float32Array,
  rate: number,
  onset: number,
  touched: number,
  line: SpectralLine,
): TimedLine {
  const length = Math.round(Math.max(earlySeconds, earlyTurns / line.hz) * rate);
  const start = onset - Math.round(0.004 * rate);
  const earlier = Math.max(0, onset - Math.round(0.006 * rate) - length);
  const cyclesPerSample = line.hz / rate;
  const early = hannSum(segment, start, length, cyclesPerSample);
  const before = hannSum(segment, earlier, length, cyclesPerSample);
  const added = addedTo(early, length, before, length, cyclesPerSample * (start - earlier));
  const short = Math.round(Math.max(earlySeconds, firstTurns / line.hz) * rate);
  const first = short < length ? hannSum(segment, start, short, cyclesPerSample) : early;
  const brief = Math.round(Math.max(touchSeconds, touchTurns / line.hz) * rate);
  const touchStart = touched - Math.round(0.001 * rate);
  const touch = hannSum(segment, touchStart, brief, cyclesPerSample);
  const turned = cyclesPerSample * (touchStart - earlier);
  return {
    hz: line.hz,
    settled: line.amplitude,
    early: Math.min((4 * early.size) / length, added),
    first: (4 * first.size) / Math.min(short, length),
    touch: Math.min((4 * touch.size) / brief, addedTo(touch, brief, before, length, turned)),
    before: (4 * before.size) / length,
    added,
  };
}

/** Amplitude of `now` less what was ringing `before`, which goes on and fades a little; each sum is over its own length, samples. */
function addedTo(
  now: HannSum,
  length: number,
  before: HannSum,
  lengthBefore: number,
  turns: number,
): number {
  const cos = fadedBetween * Math.cos(2 * Math.PI * turns);
  const sin = fadedBetween * Math.sin(2 * Math.PI * turns);
  const re = now.re / length - (before.re * cos - before.im * sin) / lengthBefore;
  const im = now.im / length - (before.re * sin + before.im * cos) / lengthBefore;
  return 4 * Math.hypot(re, im);
}
