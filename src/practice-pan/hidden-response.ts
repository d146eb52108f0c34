// What blows really do on a simulated pan: drawn from the seed, never shown. It knows nothing of what the app expects.

import {
  type BlowFirmness,
  type BlowPlace,
  type BlowSide,
  type BlowWhere,
  blowPlaces,
  blowSides,
} from '../domain/records/blow-places';
import type { MidiNote } from '../domain/tuning/units';
import { between, gaussianFrom, seededRandom } from './seeded-random';

/** Cents by which fundamental, octave and third move, each against its fixed target. */
export type Movement = readonly [fundamental: number, octave: number, third: number];

type Direction = 'up' | 'most' | 'down' | 'down-mostly' | 'little' | 'either';

/** Directions as the trade has them (common practice, no source); where it has none, each pan and note has its own. */
const directions: Readonly<
  Record<BlowPlace, Readonly<Record<BlowSide, readonly [Direction, Direction, Direction]>>>
> = {
  border: { above: ['up', 'up', 'up'], below: ['down', 'down', 'down'] },
  middle: { above: ['down-mostly', 'little', 'little'], below: ['up', 'little', 'little'] },
  'long-ends': { above: ['up', 'most', 'little'], below: ['either', 'either', 'little'] },
  'short-ends': { above: ['up', 'little', 'most'], below: ['either', 'little', 'either'] },
  corners: { above: ['up', 'little', 'little'], below: ['either', 'little', 'little'] },
  'glancing-long': {
    above: ['little', 'either', 'little'],
    below: ['little', 'either', 'little'],
  },
  'glancing-short': {
    above: ['little', 'little', 'either'],
    below: ['little', 'little', 'either'],
  },
};

/** Cents for three light blows, before the factors of pan and note; invented. */
const sizes: Readonly<Record<Direction, number>> = {
  up: 4,
  most: 6,
  down: -4,
  'down-mostly': -3,
  little: 1,
  either: 5,
};
/**
 * Factors on them are drawn from these ranges, evenly on a logarithmic scale; their product stays within `all`
 * (invented).
 */
const factors = {
  place: [0.3, 3],
  partial: [0.5, 2],
  note: [0.7, 1.4],
  /** A movement that is called little may be nearly nothing or twice as much (invented). */
  little: [0.3, 2],
  all: [0.3, 3],
} as const;
/** How often blows that mostly lower a note raise it (invented, as are all shares below). */
const unwilling = 0.25;
/**
 * How often a note goes the opposite way to the rest of its pan where both ways are possible; at most half the time.
 */
const contrary = [0, 0.5] as const;

const blow = {
  /** Spread of one blow's strength (of its logarithm), and of each partial by itself, cents. */
  spread: 0.5,
  each: 0.15,
  /** The largest part of a blow that lands at another place on the same side. */
  astray: 0.25,
  /** How often a blow lands far too hard, and how hard that is. */
  overshoots: { light: 0.02, firm: 0.06 },
  tooHard: 2.5,
  firmWorth: 2,
  lightOnesOfSize: 3,
};

/** The hidden response of one pan; the `chance` in a blow comes from outside, so that two equal blows differ. */
export function createHiddenResponse(seed: number) {
  const ofPan = new Map(
    spots.map(({ place, side }) => {
      const random = seededRandom(seed * 613 + spotNumber(place, side) * 7907 + 5);
      const strength = logBetween(random, factors.place);
      const partials = [0, 1, 2].map(() => ({
        factor: strength * logBetween(random, factors.partial),
        sign: random() < 0.5 ? -1 : 1,
        little: logBetween(random, factors.little),
      }));
      return [
        spotNumber(place, side),
        { partials, contrary: between(random, ...contrary) },
      ] as const;
    }),
  );

  /** What three light blows do on average. */
  function usualMovement(note: MidiNote, { place, side }: BlowWhere): Movement {
    const spot = spotNumber(place, side);
    const random = seededRandom(seed * 4241 + spot * 131 + note * 17389 + 11);
    const ofNote = logBetween(random, factors.note);
    const isUnwilling = random() < unwilling;
    const here = ofPan.get(spot);
    const ownSign = random() < (here?.contrary ?? 0) ? -1 : 1;
    const [fundamental, octave, third] = directions[place][side].map((direction, k) => {
      const { factor = 1, sign = 1, little = 1 } = here?.partials[k] ?? {};
      const usual = sizes[direction] * (direction === 'little' ? little : 1);
      const size = usual * within(factor * ofNote, factors.all);
      if (direction === 'down-mostly') return isUnwilling ? -size : size;
      // Where the trade says "either way", the way differs from pan to pan, and now and then from note to note.
      return direction === 'little' || direction === 'either' ? sign * ownSign * size : size;
    });
    return [fundamental ?? 0, octave ?? 0, third ?? 0];
  }

  /** What one blow does this time. */
  function oneBlow(
    note: MidiNote,
    where: BlowWhere,
    firmness: BlowFirmness,
    chance: () => number,
  ): Movement {
    const normal = gaussianFrom(chance);
    const usual = usualMovement(note, where);
    const others = blowPlaces.filter((place) => place !== where.place);
    const other = others[Math.floor(chance() * others.length)] ?? where.place;
    const beside = usualMovement(note, { place: other, side: where.side });
    const astray = blow.astray * chance();
    const isTooHard = chance() < blow.overshoots[firmness];
    const worth = (firmness === 'firm' ? blow.firmWorth : 1) / blow.lightOnesOfSize;
    const force = worth * Math.exp(blow.spread * normal()) * (isTooHard ? blow.tooHard : 1);
    const moved = (k: 0 | 1 | 2): number =>
      force * ((1 - astray) * usual[k] + astray * beside[k]) + blow.each * normal();
    return [moved(0), moved(1), moved(2)];
  }

  return { usualMovement, oneBlow };
}

const spots: readonly BlowWhere[] = blowPlaces.flatMap((place) =>
  blowSides.map((side) => ({ place, side })),
);
const spotNumber = (place: BlowPlace, side: BlowSide): number =>
  spots.findIndex((spot) => spot.place === place && spot.side === side);

const logBetween = (random: () => number, [low, high]: readonly [number, number]): number =>
  Math.exp(between(random, Math.log(low), Math.log(high)));
const within = (value: number, [low, high]: readonly [number, number]): number =>
  Math.min(high, Math.max(low, value));
