// Strikes of one note brought together: three that agree settle a reading, one among them that does not is named.
import type { Strike } from '../measurement/strike';
import type { Cents, MidiNote } from '../tuning/units';
import { agreeingStrikes, type Disagreement, disagreement, newestRun } from './agreement';
import { matchedLines } from './matched-lines';
import { ownOctaves } from './own-octave';
import { type ReadingValues, summarise } from './summarise';
import { type Walk, walkOf } from './walking';

export interface Reading extends ReadingValues {
  readonly note: MidiNote;
  /** The agreeing strikes, oldest first, each with its own octave as `octave` as far as that is known. */
  readonly strikes: readonly Strike[];
  /** Strikes among them that do not agree, and in what. */
  readonly leftOut: readonly LeftOutStrikes[];
  /** The pitch goes one way from strike to strike: the values are those of the newest strike, not a mean. */
  readonly walking: { readonly centsPerStrike: Cents } | null;
  readonly settled: boolean;
  /** All strikes that the next one is judged together with, as they were heard. */
  readonly heard: readonly Strike[];
}

export interface LeftOutStrikes {
  readonly strike: Strike;
  readonly why: Disagreement;
}

export type ReadingStep =
  | { readonly kind: 'taken'; readonly reading: Reading }
  /** The strike disagrees with those before it, too few to say which is right: the reading shows it alone. */
  | { readonly kind: 'again'; readonly reading: Reading };

/** This many strikes must agree (common practice, no source). */
export const strikesToSettle = 3;
/**
 * A reading settles only when it is surer than this: one standard error of fundamental and octave, cents (chosen, no
 * source).
 */
const settledSigma = 0.7;
const mostHeard = 9;

/** Adds a strike (settled or provisional) to the reading so far; another note starts a new reading. */
export function addStrike(reading: Reading | null, strike: Strike): ReadingStep {
  if (!reading || reading.note !== strike.note) return judged([strike]);
  const earlier = reading.heard.filter((each) => each.event !== strike.event);
  const heard = [...earlier, strike].slice(-mostHeard);
  const walk = walkOf(matchedLines(heard));
  if (walk) return { kind: 'taken', reading: walkingReading(heard, walk) };
  // A walk that has stopped: the note is where the last step led it.
  return judged(reading.walking ? heard.slice(-2) : heard);
}

function judged(heard: readonly Strike[]): ReadingStep {
  const { strikes, isOpen } = ownOctaves(matchedLines(heard));
  const newest = strikes.slice(-1);
  const isFirstLook = newest.some((strike) => strike.provisional);
  const best = agreeingStrikes(strikes);
  const run = newestRun(strikes);
  const take = (
    taken: readonly Strike[],
    kept: readonly Strike[],
    leftOut: readonly LeftOutStrikes[] = [],
  ): ReadingStep => ({
    kind: 'taken',
    reading: readingOf({ heard: kept, strikes: taken, leftOut, isOpen }),
  });

  if (best.strikes.length === strikes.length) return take(strikes, heard);
  const hasNewest = newest.every((strike) => best.strikes.includes(strike));
  // Confirmed by the next strike, a strike that disagrees was no bad one: the note has changed.
  const isConfirmed = run.length > 1 && !run.some((strike) => best.strikes.includes(strike));
  const isEnough = best.strikes.length >= strikesToSettle;
  if (isEnough && (hasNewest || (!isConfirmed && !isFirstLook))) {
    return take(best.strikes, heard, leftOutOf(strikes, best));
  }
  if (run.length > 1) {
    const before = strikes.slice(0, -run.length);
    const hasChanged = !isFirstLook && agreeingStrikes(before).strikes.length > 1;
    return take(run, hasChanged ? heard.slice(-run.length) : heard);
  }
  return {
    kind: 'again',
    reading: readingOf({ heard, strikes: newest, leftOut: [], isOpen }),
  };
}

function leftOutOf(
  strikes: readonly Strike[],
  { middle }: { readonly middle: Strike | null },
): readonly LeftOutStrikes[] {
  return strikes.flatMap((strike) => {
    const why = middle && disagreement(strike, middle);
    return why ? [{ strike, why }] : [];
  });
}

interface Parts {
  readonly heard: readonly Strike[];
  readonly strikes: readonly Strike[];
  readonly leftOut: readonly LeftOutStrikes[];
  readonly isOpen: boolean;
}

function readingOf({ heard, strikes, leftOut, isOpen }: Parts): Reading {
  const values = summarise(strikes, isOpen);
  const { fundamental, octave, octaveRival } = values;
  const count = strikes.filter((strike) => !strike.provisional).length;
  // While the damping test is still to come, the octave does not hold the reading up, because it is not judged then.
  // An inferred fundamental never becomes that sure: it settles when three strikes agree, and is judged only as finely
  // as its error allows.
  const isSure =
    values.isInferred ||
    (fundamental.sigmaCents < settledSigma &&
      (octave === null || octaveRival !== null || octave.sigmaCents < settledSigma));
  return {
    ...values,
    note: noteOf(strikes),
    heard,
    strikes,
    leftOut,
    walking: null,
    settled: count >= strikesToSettle && isSure,
  };
}

function walkingReading(heard: readonly Strike[], walk: Walk): Reading {
  const { strikes, isOpen } = ownOctaves(walk.strikes);
  return {
    ...summarise(strikes.slice(-1), isOpen),
    spread: summarise(strikes, isOpen).spread,
    note: noteOf(strikes),
    heard,
    strikes,
    leftOut: [],
    walking: { centsPerStrike: walk.centsPerStrike },
    settled: false,
  };
}

function noteOf(strikes: readonly Strike[]): MidiNote {
  const [first] = strikes;
  if (!first) throw new Error('a reading needs a strike');
  return first.note;
}
