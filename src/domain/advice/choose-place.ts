// Where to hammer next: the place, side and firmness that are expected to bring a note closest to true.

import { type BlowFirmness, type BlowWhere, strengthOf } from '../records/blow-places';
import type { MidiNote } from '../tuning/units';
import { type BlowGain, blowGain, boundsOf } from './blow-gain';
import type { BlowSet } from './blow-sets';
import { leftAfter } from './look-ahead';
import { expectedMuchWorse } from './much-worse';
import { errorsBefore, type NoteErrors } from './note-errors';
import { planBlows, plannedPlaces, wrongNow } from './plan-blows';
import type { Prediction, ResponseModel } from './response-model';

export interface Dose {
  readonly firmness: BlowFirmness;
  readonly count: number;
}

/**
 * `mend`: expected to help, by more than the doubt about it. `try`: a few light blows, to see what this place does.
 * `prepare`: known not to help by itself, the first of several steps that together do.
 */
export type BlowAim = 'mend' | 'try' | 'prepare';

export interface PlaceChoice extends BlowWhere, Dose, BlowGain {
  readonly aim: BlowAim;
  /** What the set will change, each partial against its fixed target. */
  readonly expected: Prediction;
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
/** Hardest set that is suggested while the doubt exceeds the gain, or while the gain comes only with a later step. */
const mostToTry: Dose = { firmness: 'light', count: 3 };
/** Stop exploring a place after this many trial sets (own choice, tried with `npm run bench:advice`). */
const mostTries = 4;
/**
 * A set is never suggested if its worst case makes a partial this much worse than the note ever was, cents (own
 * choice).
 */
const mostHarm = 4;
/**
 * Price of making a partial much worse, in squares of limits, so that the safer of two equal sets is taken (own
 * choice, tried with `npm run bench:advice`).
 */
const harmPrice = 25;
/** Blows expected to remove less than this share of the error, later steps included, are not worth it (own choice). */
const leastPart = 0.01;

/**
 * The set that, with the best plan for what comes after it, leaves the note the least wrong, or why there is none. No
 * set that could do much harm is suggested, and none but a few light blows whose gain is less than the doubt about it.
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
  const safe = plannedPlaces(note, model)
    .flatMap((planned) => doses.map((dose) => ({ planned, ...planned.where, ...dose })))
    .map(({ planned, ...dose }) => {
      const strength = strengthOf(dose.firmness, dose.count);
      const expected = model.predict(note, dose, { ...dose, strength });
      return { planned, set: { ...dose, ...blowGain(errors, expected, bounds), expected } };
    })
    .filter(({ set }) => set.harm <= mostHarm);
  const allowed = safe.flatMap(({ planned, set }) => {
    const aim = aimOf(set, sets);
    return aim ? [{ planned, set: { aim, ...set } }] : [];
  });
  // A plan holds only what may be done now; otherwise any blow that leaves the plan for later would look good.
  const places = [...new Set(allowed.map(({ planned }) => planned))];
  const plan = planBlows(errors, places);
  const wrong = wrongNow(errors);
  const worth = allowed.map(({ planned, set }) => {
    const strength = strengthOf(set.firmness, set.count);
    const step = { ...set, strength, at: places.indexOf(planned), usual: model.predict(note, set) };
    const harm = harmPrice * expectedMuchWorse(errors, opening, set.expected, set.count);
    return { set, gain: wrong - leftAfter(errors, places, plan, step) - harm };
  });
  const best = largest(worth, ({ gain }) => gain);
  if (best && best.gain >= leastPart * wrong) return best.set;
  return safe.some(({ set }) => set.gain > 0) ? 'too-unsure' : 'nothing-helps';
}

type ExpectedSet = Omit<PlaceChoice, 'aim'>;

/** What a set is good for by itself, or null if it may harm as easily as help and would teach nothing new. */
function aimOf(each: ExpectedSet, sets: readonly BlowSet[]): BlowAim | null {
  const { gain, doubt } = each;
  if (gain >= doubt) return 'mend';
  if (!isGentle(each)) return null;
  // If the loss is larger than the doubt about it, the loss is intended.
  if (gain < -doubt) return 'prepare';
  return triesAt(each, sets) < mostTries ? 'try' : null;
}

const isGentle = ({ firmness, count }: Dose): boolean =>
  firmness === mostToTry.firmness && count <= mostToTry.count;

const triesAt = (where: BlowWhere, sets: readonly BlowSet[]): number =>
  sets.filter(
    ({ place, side, strength }) =>
      place === where.place &&
      side === where.side &&
      strength <= strengthOf(mostToTry.firmness, mostToTry.count),
  ).length;

/** A single light blow shows what a place does; it is too little to mend anything. */
export const isTrial = ({ strength }: BlowSet): boolean => strength <= strengthOf('light', 1);

/** The first of those with the largest value, or null if there is none. */
function largest<T>(choices: readonly T[], of: (choice: T) => number): T | null {
  return choices.reduce<T | null>(
    (best, each) => (best === null || of(each) > of(best) ? each : best),
    null,
  );
}
