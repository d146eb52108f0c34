// One damped line in white noise through the app's line estimator, against the Cramér–Rao bound.

import { frequencyOf } from '../../src/domain/tuning/equal-temperament';
import { centsBetween, midiNote } from '../../src/domain/tuning/units';
import { leadSeconds } from '../../src/dsp/spectrum/strike-spectrum';
import { between, gaussianFrom, seededRandom } from '../../src/practice-pan/seeded-random';
import { boundCents } from '../sounds/cramer-rao';
import { measuredByApp, spectrumFor } from './app-line';
import { mean, rms } from './statistics';

export interface IsolatedPoint {
  readonly note: number;
  readonly snrDb: number;
  /** Length of the window, s. */
  readonly seconds: number;
  readonly trials: number;
  readonly refused: number;
  /** Root mean square of error / bound; 1 is the best an unbiased estimator can do. */
  readonly rms: number;
  /** Mean of error / bound; one standard error of it by chance is 1/√trials. */
  readonly bias: number;
  /** Root mean square of error / stated standard error; 1 where the statement is right. */
  readonly stated: number;
}

export interface IsolatedGrid {
  readonly notes: readonly number[];
  readonly snrsDb: readonly number[];
  readonly windows: readonly number[];
  /** A point's trials are shared evenly among the rates. */
  readonly sampleRates: readonly number[];
  readonly trials: number;
}

/** C2, C3, C4, C5, C6, F#6; all the table asks for. */
export const wholeGrid: IsolatedGrid = {
  notes: [36, 48, 60, 72, 84, 90],
  snrsDb: [20, 30, 40, 50],
  windows: [0.3, 0.6, 1],
  sampleRates: [44100, 48000],
  trials: 500,
};

/**
 * Where every window begins after the onset, s. The app's windows begin at 0.03 s (thirds at 0.08 s), where a glide may
 * hide: there only a very clear line is fitted as a plain one, and the others carry the doubt about a glide.
 */
const from = 0.13;
/** Sound after the longest window, s. */
const tail = 0.04;
const amplitude = 0.2;

interface Tally {
  readonly errors: number[];
  readonly standardised: number[];
  refused: number;
}

export function isolatedPoints(grid: IsolatedGrid): readonly IsolatedPoint[] {
  const tallies = new Map<string, Tally>();
  const tallyOf = (note: number, snrDb: number, seconds: number): Tally => {
    const key = `${note} ${snrDb} ${seconds}`;
    const tally = tallies.get(key) ?? { errors: [], standardised: [], refused: 0 };
    tallies.set(key, tally);
    return tally;
  };
  for (const rate of grid.sampleRates) runAtRate(grid, rate, tallyOf);
  return grid.notes.flatMap((note) =>
    grid.snrsDb.flatMap((snrDb) =>
      grid.windows.map((seconds) => {
        const { errors, standardised, refused } = tallyOf(note, snrDb, seconds);
        const trials = errors.length + refused;
        const figures = { rms: rms(errors), bias: mean(errors), stated: rms(standardised) };
        return { note, snrDb, seconds, trials, refused, ...figures };
      }),
    ),
  );
}

function runAtRate(
  grid: IsolatedGrid,
  rate: number,
  tallyOf: (note: number, snrDb: number, seconds: number) => Tally,
): void {
  const trials = Math.round(grid.trials / grid.sampleRates.length);
  const longest = Math.max(...grid.windows);
  const length = Math.round((leadSeconds + from + longest + tail) * rate);
  const noise = new Float32Array(trials * length).map(gaussianFrom(seededRandom(rate)));
  const spectrum = spectrumFor(rate);
  const segment = new Float32Array(length);
  const random = seededRandom(rate + 1);
  // Time constants belong to the trial, so that the bound is worked out once for all notes.
  const decays = Array.from({ length: trials }, () => between(random, 0.2, 0.5));
  const bounds = decays.map((decaySeconds) => grid.windows.map((s) => unitBound(decaySeconds, s)));
  for (const note of grid.notes) {
    for (const snrDb of grid.snrsDb) {
      // Every point begins elsewhere in the noise.
      const shift = Math.floor(random() * noise.length);
      const variance = 0.5 * 10 ** (-snrDb / 10);
      decays.forEach((decaySeconds, trial) => {
        const hz = frequencyOf(midiNote(note)) * 2 ** (between(random, -40, 40) / 1200);
        fillNoise(segment, noise, (shift + trial * length) % noise.length, variance);
        addLine(segment, rate, { hz, decaySeconds, phase: 2 * Math.PI * random() });
        spectrum.load(segment, length);
        const found = { hz: hz + between(random, -0.5, 0.5), amplitude, overNoiseDb: snrDb };
        grid.windows.forEach((seconds, n) => {
          const tally = tallyOf(note, snrDb, seconds);
          const measured = measuredByApp(spectrum, found, { from, to: from + seconds });
          if (!measured || !(measured.hz > 0)) {
            tally.refused++;
            return;
          }
          const bound = ((bounds[trial]?.[n] ?? Number.NaN) * Math.sqrt(variance / rate)) / hz;
          tally.errors.push(centsBetween(hz, measured.hz) / bound);
          tally.standardised.push((measured.hz - hz) / measured.sigmaHz);
        });
      });
    }
  }
}

/** The bound for 1 Hz, amplitude 1, variance 1 at one sample a second; it scales with √(variance/rate)/hz. */
const unitBound = (decaySeconds: number, seconds: number): number =>
  boundCents({
    hz: 1,
    amplitude: 1,
    decaySeconds,
    seconds,
    noiseVariance: 1,
    sampleRate: 1,
  });

function fillNoise(
  segment: Float32Array,
  noise: Float32Array,
  start: number,
  variance: number,
): void {
  const deviation = amplitude * Math.sqrt(variance);
  let at = start;
  for (let n = 0; n < segment.length; n++) {
    segment[n] = deviation * (noise[at] ?? 0);
    if (++at === noise.length) at = 0;
  }
}

/** A line from the onset on, at its full amplitude when the window begins. */
function addLine(
  segment: Float32Array,
  rate: number,
  { hz, decaySeconds, phase }: { hz: number; decaySeconds: number; phase: number },
): void {
  const first = Math.ceil(leadSeconds * rate);
  const after = first / rate - leadSeconds;
  const level = amplitude * Math.exp((from - after) / decaySeconds);
  const angle = 2 * Math.PI * hz * after + phase;
  // A pointer that turns and shrinks from sample to sample, in double precision.
  const shrink = Math.exp(-1 / (rate * decaySeconds));
  const stepCos = shrink * Math.cos((2 * Math.PI * hz) / rate);
  const stepSin = shrink * Math.sin((2 * Math.PI * hz) / rate);
  let cos = level * Math.cos(angle);
  let sin = level * Math.sin(angle);
  for (let n = first; n < segment.length; n++) {
    segment[n] = (segment[n] ?? 0) + sin;
    const next = cos * stepCos - sin * stepSin;
    sin = sin * stepCos + cos * stepSin;
    cos = next;
  }
}
