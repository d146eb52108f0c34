// Looking ahead: which sets at several places together would bring a note closest to true.
import type { MidiNote } from '../tuning/units';
import { allWheres, type BlowWhere } from './blow-places';
import { priorOf } from './blow-priors';
import { changeOfErrors, covarianceOfErrors, errorSum, type NoteErrors } from './note-errors';
import type { ResponseModel } from './response-model';
import { type Matrix3, partialIndices, type ThreePartials } from './three-partials';

/** What one usual set at a place does to the errors, and what it costs to be wrong about it. */
export interface PlannedPlace {
  readonly where: BlowWhere;
  readonly effect: ThreePartials;
  /** Added to the weighted error sum: by the square of the strength, and by the strength. */
  readonly doubtCost: number;
  readonly scatterCost: number;
}

export interface BlowPlan {
  /** Strength for each place, in the order given. */
  readonly strengths: readonly number[];
  /** The weighted error sum that is expected in the end. */
  readonly left: number;
}

/** More than this at one place is no plan any more, in usual sets. */
const mostStrength = 6;
const mostSweeps = 30;
/** Of the doubt about a place so much counts in a plan: the rest is seen while it is carried out, and answered (own choice, tried on simulated pans). */
const unanswered = 0.8;
/** Smaller steps than this change nothing that could be hammered. */
const smallestStep = 0.005;

/** Nobody is sent to places of which the trade knows nothing. */
const knownWheres = allWheres.filter((where) => priorOf(where).source !== 'nothing known');

/** What it costs in a plan to be wrong about an effect: `doubt` is the covariance of a usual set's, as errors. */
export const plannedDoubt = (errors: NoteErrors, doubt: Matrix3): number =>
  unanswered * weightedTrace(errors, doubt);

export function plannedPlaces(
  note: MidiNote,
  errors: NoteErrors,
  model: ResponseModel,
): readonly PlannedPlace[] {
  return knownWheres.map((where) => {
    const { mean, covariance, doubt } = model.predict(note, where);
    const unsure = covarianceOfErrors(doubt);
    return {
      where,
      effect: changeOfErrors(mean),
      doubtCost: plannedDoubt(errors, unsure),
      scatterCost:
        weightedTrace(errors, covarianceOfErrors(covariance)) - weightedTrace(errors, unsure),
    };
  });
}

/**
 * The strengths, none below zero, that leave the least expected weighted error: a quadratic programme, solved by
 * going through the places in turn (coordinate descent; the sum is convex, so it leads to the least). `start`: the
 * strengths of a plan that is much like it, to be there sooner.
 */
export function planBlows(
  errors: NoteErrors,
  places: readonly PlannedPlace[],
  start: readonly number[] = [],
): BlowPlan {
  const { weights } = errors;
  const strengths = places.map((_, p) => start[p] ?? 0);
  let [fundamental, octave, third] = errors.values;
  places.forEach(({ effect: [f, o, t] }, p) => {
    const strength = strengths[p] ?? 0;
    fundamental += strength * f;
    octave += strength * o;
    third += strength * t;
  });
  let largestStep = Number.POSITIVE_INFINITY;
  for (let sweep = 0; sweep < mostSweeps && largestStep > smallestStep; sweep++) {
    largestStep = 0;
    places.forEach(({ effect: [f, o, t], doubtCost, scatterCost }, p) => {
      const before = strengths[p] ?? 0;
      const curve = weights[0] * f * f + weights[1] * o * o + weights[2] * t * t;
      const slope = weights[0] * fundamental * f + weights[1] * octave * o + weights[2] * third * t;
      const bend = curve + doubtCost;
      // A place that does nothing, for certain.
      if (bend === 0) return;
      const best = before - (slope + doubtCost * before + scatterCost / 2) / bend;
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
  const cost = places.reduce((sum, { doubtCost, scatterCost }, p) => {
    const strength = strengths[p] ?? 0;
    return sum + strength ** 2 * doubtCost + strength * scatterCost;
  }, 0);
  return { strengths, left: errorSum({ weights, values: [fundamental, octave, third] }) + cost };
}

const weightedTrace = ({ weights }: NoteErrors, matrix: Matrix3): number =>
  partialIndices.reduce<number>((sum, k) => sum + weights[k] * matrix[k][k], 0);
