// What sounds along at a hard or soft stroke on a real pan: stick, shell, high modes, exact harmonics, other notes.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';
import { addBurst, addModes, type Mode, modesOf } from '../../src/practice-pan/shell-sound';
import type { StruckPartial } from '../../src/practice-pan/struck-note';

/**
 * Levels are against the note's own power in its first 28 ms, dB. Origin as in `noteFigures`: the energy of the real
 * strikes beside 1, 2, 3, 4 times the fundamental, by octave bands and by strength of the stroke.
 */
export const restFigures = {
  /** Short noise of the stick. */
  stick: { softDb: -32, hardDb: -12, spread: 6, seconds: [0.001, 0.004], brightHz: [1500, 9000] },
  /** Dull thump of the shell, louder against a soft stroke on a high note. */
  thump: { db: -20, spread: 5, seconds: [0.008, 0.03], brightHz: [150, 600] },
  /** High modes: hardly there at soft strokes, loud from the middle strength on. */
  high: {
    softDb: -33,
    hardDb: -6,
    from: 0.35,
    to: 0.75,
    spread: 5,
    hz: [1700, 5500],
    decaySeconds: [0.04, 0.16],
  },
  middle: { softDb: -25, hardDb: -14, spread: 4, hz: [700, 2000], decaySeconds: [0.05, 0.18] },
  /** Exact harmonics 5 to 16: how many on average at a soft and a hard stroke, at most; against the fundamental. */
  harmonics: { soft: 0, hard: 3.4, most: 5, db: [-42, -16], decaySeconds: [0.06, 0.15] },
  /** Other notes below 700 Hz that sound at once, and any that bloom. */
  atOnce: { db: -16, spread: 4, softHighDb: 20, count: [2, 5] },
  blooming: { db: [-36, -15], count: 3, bloomSeconds: [0.03, 0.09] },
} as const;

/** Powers, mean over the first 28 ms, as amplitudes of one sine. */
const earlySeconds = 0.028;
export function earlyLevel(samples: Float32Array, sampleRate: number, at: number): number {
  const part = samples.subarray(
    Math.round(at * sampleRate),
    Math.round((at + earlySeconds) * sampleRate),
  );
  return Math.sqrt((2 * part.reduce((sum, value) => sum + value * value, 0)) / part.length);
}

const level = (db: number): number => 10 ** (db / 20);

export interface Struck {
  readonly note: number;
  readonly hz: number;
  readonly strength: number;
  readonly at: number;
  readonly glide: Pick<StruckPartial, 'glideCents' | 'glideSeconds' | 'glidePower'>;
}

/** Adds stick, thump and modes to `samples`; `own` is the note's own early level there. */
export function addStickAndShell(
  samples: Float32Array,
  sampleRate: number,
  struck: Struck,
  own: number,
  random: () => number,
): void {
  const gaussian = gaussianFrom(random);
  const { stick, thump, high, middle } = restFigures;
  const { at, strength } = struck;
  const burst = (db: number, seconds: number, brightHz: number): void => {
    // A burst shorter than the first 28 ms: its mean power there is what its level says.
    const mean = Math.sqrt(
      (seconds / 2 / earlySeconds) * (1 - Math.exp((-2 * earlySeconds) / seconds)),
    );
    addBurst(
      samples,
      sampleRate,
      at,
      { level: (own * level(db)) / Math.SQRT2 / mean, seconds, brightHz },
      random,
    );
  };
  burst(
    stick.softDb + (stick.hardDb - stick.softDb) * strength + stick.spread * gaussian(),
    between(random, ...stick.seconds),
    between(random, ...stick.brightHz),
  );
  burst(
    thump.db + thump.spread * gaussian(),
    between(random, ...thump.seconds),
    between(random, ...thump.brightHz),
  );
  const part = Math.min(1, Math.max(0, (strength - high.from) / (high.to - high.from)));
  const highest = modesOf(random, {
    count: Math.round(10 + 40 * strength),
    lowHz: Math.max(high.hz[0], 4.5 * struck.hz),
    highHz: high.hz[1] * (4.5 * struck.hz > 4000 ? 1.5 : 1),
    decaySeconds: high.decaySeconds,
    bloomSeconds: 0.012,
  });
  const between1and2kHz = modesOf(random, {
    count: 10,
    lowHz: middle.hz[0],
    highHz: middle.hz[1],
    decaySeconds: middle.decaySeconds,
    bloomSeconds: 0.012,
  });
  const add = (modes: readonly Mode[], db: number): void =>
    addModes(samples, sampleRate, at, modes, own * level(db));
  add(highest, high.softDb + (high.hardDb - high.softDb) * part + high.spread * gaussian());
  add(
    between1and2kHz,
    middle.softDb + (middle.hardDb - middle.softDb) * strength + middle.spread * gaussian(),
  );
}

/** Some of the exact harmonics 5 to 16, gliding with the note; the orders come with them. */
export function exactHarmonics(
  random: () => number,
  struck: Struck,
  sampleRate: number,
): readonly StruckPartial[] {
  const { soft, hard, most, db, decaySeconds } = restFigures.harmonics;
  const mean = soft + (hard - soft) * struck.strength ** 2;
  const orders = Array.from({ length: 12 }, (_, n) => 5 + n).filter(
    (order) => order * struck.hz < 0.4 * sampleRate,
  );
  const chosen = orders
    .map((order) => ({ order, lot: random() }))
    .filter(({ lot }) => lot < mean / orders.length)
    .slice(0, most);
  return chosen.map(({ order }) => ({
    ...struck.glide,
    hz: order * struck.hz * 2 ** (between(random, -4, 4) / 1200),
    amplitude: level(between(random, ...db)),
    decaySeconds: between(random, ...decaySeconds),
    bloomSeconds: between(random, 0.001, 0.01),
    phase: 2 * Math.PI * random(),
  }));
}
