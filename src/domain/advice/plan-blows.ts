// Looking ahead: which sets at several places together would bring a note closest to true.

import {
  diagonalOf,
  dot3,
  type Matrix3,
  mapThree,
  matrix3,
  partialIndices,
  type ThreePartials,
} from '../numbers/three-partials';
import { allWheres, type BlowWhere } from '../records/blow-places';
import type { MidiNote } from '../tuning/units';
import { normalAbove } from './blow-gain';
import { priorOf } from './blow-priors';
import {
  changeOfErrors,
  covarianceOfErrors,
  errorSum,
  isJudged,
  type NoteErrors,
  partialsOff,
} from './note-errors';
import type { ResponseModel } from './response-model';

/** What one usual set at a place does to the errors, and how unsure that is. */
export interface PlannedPlace {
  readonly where: BlowWhere;
  readonly effect: ThreePartials;
  /** Variance of the effect: what is not known about the place. Goes with the square of the strength. */
  readonly doubt: ThreePartials;
  /** Variance from set to set. Goes with the strength. */
  readonly scatter: ThreePartials;
}

export interface BlowPlan {
  /** Strength for each place, in the order given. */
  readonly strengths: readonly number[];
  /** What is expected to be wrong in the end, as in `wrongNow`. */
  readonly left: number;
}

/** Most that a plan may ask of one place, in usual sets (own choice). */
const mostStrength = 6;
const mostSweeps = 30;
/**
 * Share of a place's uncertainty that a plan pays for; the rest is seen and answered while the plan is carried out
 * (own choice, tried with `npm run bench:advice`).
 */
const unanswered = 0.8;
/** Steps smaller than this are too small to hammer, in usual sets. */
const smallestStep = 0.005;

/**
 * What any partial outside its limit adds to the error, in squares of limits (own choice, tried with `npm run
 * bench:advice`).
 */
const outsideWorth = 3;
/**
 * Weight of partials outside their limit in a second plan: the first may find them not worth moving (own choice,
 * tried with `npm run bench:advice`).
 */
const offFactor = 3;

/** One standard error of a measured change against a fixed target, cents. */
const usualSigma = 0.25;
/** Covariance of the errors of a reading. */
export const measuring: Matrix3 = covarianceOfErrors(
  matrix3((i, j) => (i === j ? usualSigma ** 2 : 0)),
);
const measuringVariances = diagonalOf(measuring);

/** Places of which the trade knows nothing are never suggested. */
const knownWheres = allWheres.filter((where) => priorOf(where).source !== 'nothing known');

export function plannedPlaces(note: MidiNote, model: ResponseModel): readonly PlannedPlace[] {
  return knownWheres.map((where) => {
    const { mean, covariance, doubt } = model.predict(note, where);
    const unsure = diagonalOf(covarianceOfErrors(doubt));
    const spread = diagonalOf(covarianceOfErrors(covariance));
    return {
      where,
      effect: changeOfErrors(mean),
      doubt: unsure,
      scatter: mapThree(spread, (variance, k) => variance - unsure[k]),
    };
  });
}

/** How wrong the note is as it stands: the weighted sum of squares, and more while a partial is outside its limit. */
export const wrongNow = (errors: NoteErrors): number =>
  errorSum(errors) + (partialsOff(errors).length > 0 ? outsideWorth : 0);

/**
 * The better of two plans: one that leaves the least expected weighted error, and one that cares more for what is
 * outside its limit. `start`: strengths of a similar plan to begin the search from.
 */
export function planBlows(
  errors: NoteErrors,
  places: readonly PlannedPlace[],
  start: readonly number[] = [],
): BlowPlan {
  const strengths = leastSquares(errors, places, start);
  const plan = { strengths, left: wrongAfter(errors, places, strengths) };
  const off = partialsOff(errors);
  if (off.length === 0) return plan;
  const weights = mapThree(errors.weights, (weight, k) =>
    off.includes(k) ? offFactor * weight : weight,
  );
  const others = leastSquares({ ...errors, weights }, places, strengths);
  const other = { strengths: others, left: wrongAfter(errors, places, others) };
  return other.left < plan.left ? other : plan;
}

/**
 * The strengths, none below zero, that leave the least expected weighted sum of squares: a quadratic programme, solved
 * by going through the places in turn (coordinate descent; the sum is convex, so it leads to the least).
 */
function leastSquares(
  { values, weights }: NoteErrors,
  places: readonly PlannedPlace[],
  start: readonly number[],
): readonly number[] {
  const strengths = places.map((_, p) => start[p] ?? 0);
  let [fundamental, octave, third] = values;
  const costs = places.map(({ effect: [f, o, t], doubt, scatter }, p) => {
    const strength = strengths[p] ?? 0;
    fundamental += strength * f;
    octave += strength * o;
    third += strength * t;
    return { doubt: unanswered * dot3(weights, doubt), scatter: dot3(weights, scatter) };
  });
  let largestStep = Number.POSITIVE_INFINITY;
  for (let sweep = 0; sweep < mostSweeps && largestStep > smallestStep; sweep++) {
    largestStep = 0;
    places.forEach(({ effect: [f, o, t] }, p) => {
      const before = strengths[p] ?? 0;
      const cost = costs[p] ?? noCost;
      const curve = weights[0] * f * f + weights[1] * o * o + weights[2] * t * t;
      const slope = weights[0] * fundamental * f + weights[1] * octave * o + weights[2] * third * t;
      const bend = curve + cost.doubt;
      // A place that does nothing, for certain.
      if (bend === 0) return;
      const best = before - (slope + cost.doubt * before + cost.scatter / 2) / bend;
      const strength = Math.min(mostStrength, Math.max(0, best));
      const step = strength - before;
      if (step === 0) return;
      strengths[p] = strength;
      largestStep = Math.max(largestStep, Math.abs(step));
      fundamental += step * f;
      octave += step * o;
      third += step * t;
    });
  }
  return strengths;
}

const noCost = { doubt: 0, scatter: 0 };

/** How wrong the note is expected to be after sets of these strengths. */
function wrongAfter(
  errors: NoteErrors,
  places: readonly PlannedPlace[],
  strengths: readonly number[],
): number {
  const end: [number, number, number] = [...errors.values];
  const variance: [number, number, number] = [0, 0, 0];
  places.forEach(({ effect, doubt, scatter }, p) => {
    const strength = strengths[p] ?? 0;
    if (strength === 0) return;
    for (const k of partialIndices) {
      end[k] += strength * effect[k];
      variance[k] += strength ** 2 * unanswered * doubt[k] + strength * scatter[k];
    }
  });
  const { weights, limits } = errors;
  const within = partialIndices.reduce<number>((chance, k) => {
    if (!isJudged(errors, k)) return chance;
    const deviation = Math.sqrt(variance[k] + measuringVariances[k]);
    const [above, below] = [limits[k] - end[k], limits[k] + end[k]];
    return chance * (1 - normalAbove(above / deviation) - normalAbove(below / deviation));
  }, 1);
  const squares = errorSum({ weights, values: end }) + dot3(weights, variance);
  return squares + outsideWorth * (1 - within);
}
