// Where to hammer next: of the places the trade knows for this fault, the one expected to help most.

import { mapThree, type PartialIndex, partialIndices } from '../numbers/three-partials';
import { type BlowFirmness, type BlowWhere, strengthOf } from '../records/blow-places';
import type { MidiNote } from '../tuning/units';
import { type BlowGain, blowGain, boundsOf } from './blow-gain';
import type { BlowSet } from './blow-sets';
import { expectedMuchWorse } from './much-worse';
import {
  changeOfErrors,
  errorSum,
  errorsBefore,
  isJudged,
  type NoteErrors,
  partialsOff,
} from './note-errors';
import { casesInOrder, type NoteNeeds, needsAfter, stepsFor } from './note-fault';
import type { Prediction, ResponseModel } from './response-model';
import type { TradeCase } from './trade-cases';

export interface Dose {
  readonly firmness: BlowFirmness;
  readonly count: number;
}

/**
 * `mend`: expected to help, by more than the doubt about it. `try`: one or two light blows, to see which way or how
 * much this place moves the note.
 */
export type BlowAim = 'mend' | 'try';

export interface PlaceChoice extends BlowWhere, Dose, BlowGain {
  readonly aim: BlowAim;
  /** What the set will change, each partial against its fixed target. */
  readonly expected: Prediction;
  /** What the trade uses it for. */
  readonly step: TradeCase;
  /** The steps that follow when this one is done. */
  readonly later: readonly TradeCase[];
}

/** Sets that may be suggested, gentlest first: of two that promise the same, the gentler is taken. */
const doses: readonly Dose[] = [
  { firmness: 'light', count: 1 },
  { firmness: 'light', count: 2 },
  { firmness: 'light', count: 3 },
  { firmness: 'light', count: 4 },
  { firmness: 'light', count: 6 },
  { firmness: 'firm', count: 4 },
  { firmness: 'firm', count: 6 },
];
/** "One or two light blows and a strike" (common practice, no source). */
const mostToTry: Dose = { firmness: 'light', count: 2 };
/** Stop exploring a place after this many trial sets (own choice, tried with `npm run bench:advice`). */
const mostTries = 4;
/**
 * A place is tried only while it may well move the partials the right way: the wrong way by less than this part of
 * the doubt, and the right way by at least `worthMoving` cents if it does better than expected (own choices).
 */
const wrongWay = 0.5;
const worthMoving = 1;
/** A set is never suggested if its worst case makes a partial this much worse than it ever was, cents (own choice). */
const mostHarm = 4;
/**
 * Price of making a partial much worse, in squares of limits, so that the safer of two equal sets is taken (own
 * choice, tried with `npm run bench:advice`).
 */
const harmPrice = 25;
/** A trial is made only if it makes a partial much worse with at most this chance (own choice, tried the same way). */
const mostRisk = 0.35;
/** What a place does is well known when the doubt is at most this part of it (own choice, tried the same way). */
const wellKnown = 0.35;
/** Blows expected to remove less than this share of the error are not worth it (own choice). */
const leastPart = 0.01;

/**
 * The set to hammer next, or why there is none. The rules of the trade come first: only their places are looked at,
 * in their order, and nothing is suggested after which a partial that is within its limit is expected outside.
 * `sets`: those on this note so far.
 */
export function choosePlace(
  note: MidiNote,
  errors: NoteErrors,
  model: ResponseModel,
  sets: readonly BlowSet[] = [],
): PlaceChoice | 'nothing-helps' | 'too-unsure' {
  const opening = { values: errorsBefore(errors, sets) };
  const bounds = boundsOf(errors, opening);
  const off = partialsOff(errors);
  let isTooUnsure = false;
  for (const step of casesInOrder(errors)) {
    const possible = step
      .flatMap((open) => open.trade.places.map((where) => ({ ...open, where })))
      .flatMap(({ trade, needs, where }): readonly PossibleSet[] => {
        const usual = model.predict(note, where);
        return doses.map((dose) => {
          const strength = strengthOf(dose.firmness, dose.count);
          const expected = model.predict(note, where, { ...dose, strength });
          const gain = blowGain(errors, expected, bounds);
          const risk = expectedMuchWorse(errors, opening, expected, dose.count);
          return {
            ...where,
            ...dose,
            ...gain,
            strength,
            expected,
            step: trade,
            needs,
            usual,
            risk,
          };
        });
      })
      .filter(({ expected }) => keepsWhatIsGood(errors, expected));
    const mending = largest(
      possible.filter(
        (set) =>
          set.gain >= set.doubt && set.harm <= mostHarm && set.strength <= boldest(set, sets),
      ),
      ({ gain, risk }) => gain - harmPrice * risk,
    );
    if (mending && mending.gain >= leastPart * errorSum(errors)) return chosen(mending, 'mend');
    const trial = largest(
      possible.filter((set) => set.risk <= mostRisk && isWorthATry(set, off, sets)),
      (set) => hopeOf(set) - harmPrice * set.risk,
    );
    if (trial) return chosen(trial, 'try');
    isTooUnsure ||= possible.some(({ gain }) => gain > 0);
  }
  return isTooUnsure ? 'too-unsure' : 'nothing-helps';
}

interface PossibleSet extends Omit<PlaceChoice, 'aim' | 'later'> {
  readonly strength: number;
  readonly needs: NoteNeeds;
  readonly usual: Prediction;
  /** How many partials are expected to be made much worse. */
  readonly risk: number;
}

function chosen(
  { usual: _, needs, strength: __, risk: ___, ...set }: PossibleSet,
  aim: BlowAim,
): PlaceChoice {
  const rest = stepsFor(needsAfter(needs, set.step));
  return { ...set, aim, later: rest.flatMap(([first]) => first ?? []) };
}

/** How hard a set may be where it is not well known what blows do: gentle at first, then twice as hard at most. */
function boldest(set: PossibleSet, sets: readonly BlowSet[]): number {
  const isKnown = movedRight(set).every(({ mean, unsure }) => unsure <= wellKnown * mean);
  if (isKnown) return Number.POSITIVE_INFINITY;
  const hardest = Math.max(0, ...setsAt(set, sets).map(({ strength }) => strength));
  return Math.max(strengthOf(mostToTry.firmness, mostToTry.count), 2 * hardest);
}

/** A partial within its limit is never moved out on purpose. */
function keepsWhatIsGood(errors: NoteErrors, { mean }: Prediction): boolean {
  const { values, limits } = errors;
  const change = changeOfErrors(mean);
  return partialIndices.every(
    (k) =>
      !isJudged(errors, k) ||
      Math.abs(values[k]) > limits[k] ||
      Math.abs(values[k] + change[k]) <= limits[k],
  );
}

/** How far a usual set moves each partial that this step is to move, counted the right way, and how unsure that is. */
function movedRight({ step, usual, needs }: PossibleSet) {
  return mapThree(partialIndices, (k) => {
    const must = step.must[k];
    if (must === 'stay' || must !== needs[k]) return null;
    return {
      mean: must === 'up' ? usual.mean[k] : -usual.mean[k],
      unsure: Math.sqrt(usual.doubt[k][k]),
    };
  }).filter((each) => each !== null);
}

function isWorthATry(
  set: PossibleSet,
  off: readonly PartialIndex[],
  sets: readonly BlowSet[],
): boolean {
  if (set.strength > strengthOf(mostToTry.firmness, mostToTry.count)) return false;
  // A partial within its limit is not put at risk for a trial.
  if (!off.some((k) => set.step.must[k] === set.needs[k])) return false;
  const seen = setsAt(set, sets);
  // One blow where nothing has been seen yet; it may go the wrong way.
  if (seen.length === 0 && set.count > 1) return false;
  const tries = seen.filter(({ strength }) => strength <= set.strength).length;
  return (
    tries < mostTries &&
    movedRight(set).every(
      ({ mean, unsure }) => mean >= -wrongWay * unsure && mean + unsure >= worthMoving,
    )
  );
}

/** How many cents a trial may show to be possible, the more blows the clearer. */
const hopeOf = (set: PossibleSet): number =>
  movedRight(set).reduce((sum, { mean, unsure }) => sum + mean + unsure, 0) * set.strength;

const setsAt = ({ place, side }: BlowWhere, sets: readonly BlowSet[]): readonly BlowSet[] =>
  sets.filter((each) => each.place === place && each.side === side);

/** A single light blow shows what a place does; it is too little to mend anything. */
export const isTrial = ({ strength }: BlowSet): boolean => strength <= strengthOf('light', 1);

/** The first of those with the largest value, or null if there is none. */
function largest<T>(choices: readonly T[], of: (choice: T) => number): T | null {
  return choices.reduce<T | null>(
    (best, each) => (best === null || of(each) > of(best) ? each : best),
    null,
  );
}
