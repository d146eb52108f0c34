// What one strike is like, in the figures by which simulated strikes are set against real ones. It is told the note
// and the onset and decides nothing; it shares no code with the ear but the Fourier transform.
import { amplitudesAt, type Sound, timesFrom } from './band-course';
import { complex, conjugate, plus, squared, times } from './complex';
import { linesNear } from './near-lines';
import { type PowerSpectrum, powerSpectrum, strongestBetween } from './power-spectrum';

export interface KnownStrike extends Sound {
  /** Onset, s from the first sample. */
  readonly at: number;
  /** About the fundamental, Hz: the strongest line within a semitone is taken. */
  readonly nearHz: number;
}

/** Null where a figure cannot be had of this strike. */
export interface StrikeFigures {
  /** Part of the energy of the first 28 ms that lies at 1, 2, 3 and 4 times the fundamental, 0…1. */
  readonly ownShare: number;
  /** Level at twice the fundamental in the first 28 ms against 0.1 to 0.3 s, dB. */
  readonly octaveEarlyOverLateDb: number;
  /** From the onset until the octave first comes within 3 dB of its loudest, ms. */
  readonly octaveRiseMs: number;
  /** Octave against fundamental, 0.1 to 0.5 s, dB. */
  readonly octaveOverFundamentalDb: number;
  /** Time constant of the fundamental's level, 0.1 to 0.5 s, times the root of its frequency, √s. */
  readonly ringRoot: number | null;
  /** Pitch of the fundamental around 0.05 s and 0.15 s against that of 0.3 to 0.55 s, cents. */
  readonly pitchAt50Ms: number;
  readonly pitchAt150Ms: number;
  /** How many of the exact harmonics 5 to 16 can be heard, 0.1 to 0.5 s. */
  readonly exactHarmonics: number;
  /** Whether the fundamental has a second line within 12 dB, 1.5 to 10 Hz away, and how far away, Hz. */
  readonly hasSecondLine: boolean;
  readonly secondLineHz: number | null;
}

const earlySeconds = 0.028;

export function strikeFigures(strike: KnownStrike): StrikeFigures {
  const { at, nearHz } = strike;
  const ringing = powerSpectrum(strike, at + 0.1, at + 0.5, 2 ** 17, 'hann');
  const semitone = 2 ** (1 / 12);
  const hz = strongestBetween(ringing, nearHz / semitone, nearHz * semitone);
  const early = powerSpectrum(strike, at, at + earlySeconds, 2 ** 14, 'plain');
  const octave = courseOf(strike, 2 * hz, 2 / hz);
  const fundamental = courseOf(strike, hz, 2 / hz);
  const pitches = pitchesOf(strike, hz);
  const [first, ...others] = linesNear(strike, hz, at + 0.1, at + 0.588);
  const beside =
    first && others.find((each) => each.db >= -12 && within(Math.abs(each.hz - first.hz), 1.5, 10));
  return {
    ownShare: ownShareOf(early, hz),
    octaveEarlyOverLateDb: decibel(
      meanPower(octave, at, at + earlySeconds) / meanPower(octave, at + 0.1, at + 0.3),
    ),
    octaveRiseMs: 1000 * riseOf(octave, at),
    octaveOverFundamentalDb: decibel(
      meanPower(octave, at + 0.1, at + 0.5) / meanPower(fundamental, at + 0.1, at + 0.5),
    ),
    ringRoot: ringRootOf(fundamental, at, hz),
    ...pitches,
    exactHarmonics: exactHarmonicsOf(ringing, hz, strike.sampleRate),
    hasSecondLine: beside !== undefined,
    secondLineHz: beside && first ? Math.abs(beside.hz - first.hz) : null,
  };
}

const within = (value: number, low: number, high: number): boolean => value >= low && value <= high;
const decibel = (ratio: number): number => 10 * Math.log10(Math.max(ratio, 1e-12));

interface Course {
  readonly times: readonly number[];
  readonly power: readonly number[];
}

const courseStep = 0.0005;

/** Power at `hz` every half millisecond from 0 to 0.6 s after the onset, through a bell of `width` s. */
function courseOf(strike: KnownStrike, hz: number, width: number): Course {
  const instants = timesFrom(strike.at, strike.at + 0.6, courseStep);
  return { times: instants, power: amplitudesAt(strike, hz, width, instants).map(squared) };
}

function meanPower({ times: instants, power }: Course, from: number, to: number): number {
  const chosen = power.filter((_, n) => within(instants[n] ?? 0, from, to));
  return chosen.reduce((sum, each) => sum + each, 0) / Math.max(1, chosen.length) + 1e-20;
}

/** Within three decibels of the loudest of the first 0.3 s. */
function riseOf(course: Course, at: number): number {
  const first = course.times.findLastIndex((time) => time <= at + 0.3);
  const power = course.power.slice(0, first + 1);
  const most = Math.max(...power);
  const index = power.findIndex((each) => each >= most / 2);
  return (course.times[index] ?? at) - at;
}

/** At least this wide a band belongs to a partial: the first zero of the plain window, a glide of a hard stroke. */
const ownCents = 100;
const lowestHeard = 60;

function ownShareOf({ power, step }: PowerSpectrum, hz: number): number {
  let own = 0;
  let all = 1e-30;
  for (let k = Math.ceil(lowestHeard / step); k < power.length; k++) {
    const away = [1, 2, 3, 4].some((order) => {
      const reach = Math.max(1.2 / earlySeconds, order * hz * (2 ** (ownCents / 1200) - 1));
      return Math.abs(k * step - order * hz) < reach;
    });
    all += power[k] ?? 0;
    if (away) own += power[k] ?? 0;
  }
  return own / all;
}

/** From the straight line through the level in decibels, as far as it is within 40 dB of its loudest. */
function ringRootOf(course: Course, at: number, hz: number): number | null {
  const levels = course.power.map(decibel);
  const loudest = Math.max(...levels);
  const points = levels.flatMap((level, n) => {
    const time = (course.times[n] ?? 0) - at;
    return within(time, 0.1, 0.5) && level > loudest - 40 ? [{ time, level }] : [];
  });
  if (points.length < 100) return null;
  const meanOf = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const time = meanOf(points.map((point) => point.time));
  const level = meanOf(points.map((point) => point.level));
  const slope =
    points.reduce((sum, point) => sum + (point.time - time) * (point.level - level), 0) /
    points.reduce((sum, point) => sum + (point.time - time) ** 2, 0);
  return slope < 0 ? (20 / Math.LN10 / -slope) * Math.sqrt(hz) : null;
}

/** Frequency by the phase from step to step, weighted by the squared amplitude, against the late one. */
function pitchesOf(
  strike: KnownStrike,
  hz: number,
): Pick<StrikeFigures, 'pitchAt50Ms' | 'pitchAt150Ms'> {
  const { at } = strike;
  const hzBetween = (from: number, to: number): number => {
    const step = 0.002;
    const course = amplitudesAt(strike, hz, 6 / hz, timesFrom(at + from, at + to, step));
    const turn = course
      .slice(1)
      .reduce(
        (sum, each, n) => plus(sum, times(each, conjugate(course[n] ?? complex(0)))),
        complex(0),
      );
    return hz + Math.atan2(turn.im, turn.re) / (2 * Math.PI * step);
  };
  const late = hzBetween(0.3, 0.55);
  const cents = (each: number): number => 1200 * Math.log2(Math.max(1, each) / Math.max(1, late));
  return {
    pitchAt50Ms: cents(hzBetween(0.03, 0.07)),
    pitchAt150Ms: cents(hzBetween(0.12, 0.18)),
  };
}

/** What the ear's own rule takes for the reach of a harmonic, and what stands out: over its surroundings, and at all. */
const harmonicCents = 16;
const overSurroundingsDb = 15;
const underLoudestDb = -45;

function exactHarmonicsOf({ power, step }: PowerSpectrum, hz: number, sampleRate: number): number {
  const loudest = power.reduce((most, each) => Math.max(most, each), 0);
  const at = (k: number): number => power[k] ?? 0;
  let heard = 0;
  for (let order = 5; order <= 16 && order * hz < 0.4 * sampleRate; order++) {
    const middle = order * hz;
    const around: number[] = [];
    for (let k = Math.ceil((middle - hz / 2) / step); k < (middle + hz / 2) / step; k++) {
      around.push(at(k));
    }
    const usual = around.sort((a, b) => a - b)[around.length >> 1] ?? 0;
    const least = Math.max(
      usual * 10 ** (overSurroundingsDb / 10),
      loudest * 10 ** (underLoudestDb / 10),
    );
    const reach = 2 ** (harmonicCents / 1200);
    for (let k = Math.ceil(middle / reach / step); k <= (middle * reach) / step; k++) {
      if (at(k) > least && at(k) >= at(k - 1) && at(k) >= at(k + 1)) {
        heard++;
        break;
      }
    }
  }
  return heard;
}
