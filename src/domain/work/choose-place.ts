// Where to hammer next: the place, side and firmness that are expected to bring a note closest to true.
import type { MidiNote } from '../tuning/units';
import { type BlowGain, blowGain, boundsOf } from './blow-gain';
import { type BlowFirmness, type BlowWhere, strengthOf } from './blow-places';
import { priorOf } from './blow-priors';
import type { BlowSet } from './blow-sets';
import { errorSum, errorsBefore, type NoteErrors } from './note-errors';
import { planBlows, plannedPlaces } from './plan-blows';
import type { Prediction, ResponseModel } from './response-model';
import { trialGain, trialStrength } from './trial-gain';

export interface Dose {
  readonly firmness: BlowFirmness;
  readonly count: number;
}

export interface PlaceChoice extends BlowWhere, Dose, BlowGain {
  /** `mend`: expected to help, by more than the doubt about it. `try`: one light blow, to see what this place does. */
  readonly aim: 'mend' | 'try';
  /** What the set will change, each partial against its fixed target. */
  readonly expected: Prediction;
}

/** Sets that are suggested, the gentlest first: of two that promise as much the gentler one is taken. */
const doses: readonly Dose[] = [
  { firmness: 'light', count: 1 },
  { firmness: 'light', count: 2 },
  { firmness: 'light', count: 3 },
  { firmness: 'light', count: 4 },
  { firmness: 'light', count: 6 },
  { firmness: 'firm', count: 4 },
  { firmness: 'firm', count: 6 },
];
const gentlest: Dose = { firmness: 'light', count: 1 };
/** What a place has not shown in so many single blows it will not show in one more. */
const mostTrials = 2;
/** No set is suggested that may, at the worst, make a partial this much worse, cents. */
const mostWorsening = 4;
/** A set that is expected to take away less than this part of the error is not worth a blow. */
const leastPart = 0.03;
const leastPartOfTrial = 0.01;

/**
 * The set that most reduces the expected weighted error of the three partials, or why there is none. A set whose
 * gain is less than the doubt about it is not suggested, nor one that could do much harm; places of the best plan
 * over all places come first. Where no place is sure enough, one light blow may be worth what it teaches.
 * `sets`: those on this note so far.
 */
export function choosePlace(
  note: MidiNote,
  errors: NoteErrors,
  model: ResponseModel,
  sets: readonly BlowSet[] = [],
): PlaceChoice | 'nothing-helps' | 'too-unsure' {
  const bounds = boundsOf(errors, { values: errorsBefore(errors, sets) });
  const places = plannedPlaces(note, errors, model);
  const plan = planBlows(errors, places);
  const safe = places
    .flatMap(({ where }, at) => doses.map((dose) => ({ ...where, ...dose, at })))
    .map((dose): Candidate => {
      const expected = model.predict(note, dose, strengthOf(dose.firmness, dose.count));
      return { ...dose, ...blowGain(errors, expected, bounds), expected };
    })
    .filter(({ worsening }) => worsening <= mostWorsening);
  const sum = errorSum(errors);
  const sure = safe.filter(({ gain, doubt }) => gain >= doubt && gain >= leastPart * sum);
  const planned = sure.filter(({ at, firmness, count }) => {
    const strength = plan.strengths[at] ?? 0;
    return strength > 0 && strengthOf(firmness, count) <= Math.max(strength, trialStrength);
  });
  const mend = largest(planned, ({ gain }) => gain);
  if (mend) return chosen('mend', mend);
  const trials = safe.filter(
    (each) =>
      each.firmness === gentlest.firmness &&
      each.count === gentlest.count &&
      // Nobody is sent to places of which the trade knows nothing.
      priorOf(each).source !== 'nothing known' &&
      sets.filter((set) => isTrial(set) && isSameWhere(set, each)).length < mostTrials,
  );
  const worth = trials.map((trial) => ({
    trial,
    gain: trialGain(errors, places, plan, trial.at, model.predict(note, trial), trial.expected),
  }));
  const best = largest(worth, ({ gain }) => gain);
  if (best && best.gain >= leastPartOfTrial * sum) return chosen('try', best.trial);
  const other = largest(sure, ({ gain }) => gain);
  if (other) return chosen('mend', other);
  return safe.some(({ gain }) => gain > 0) ? 'too-unsure' : 'nothing-helps';
}

interface Candidate extends Omit<PlaceChoice, 'aim'> {
  /** Number of the place in the plan. */
  readonly at: number;
}

const chosen = (aim: PlaceChoice['aim'], { at: _, ...candidate }: Candidate): PlaceChoice => ({
  aim,
  ...candidate,
});

/** A single light blow shows what a place does; it is too little to mend much. */
export const isTrial = ({ strength }: BlowSet): boolean =>
  strength <= strengthOf(gentlest.firmness, gentlest.count);

const isSameWhere = (one: BlowWhere, other: BlowWhere): boolean =>
  one.place === other.place && one.side === other.side;

/** The first of those with the largest value, or null if there is none. */
function largest<T>(choices: readonly T[], of: (choice: T) => number): T | null {
  return choices.reduce<T | null>(
    (best, each) => (best === null || of(each) > of(best) ? each : best),
    null,
  );
}
