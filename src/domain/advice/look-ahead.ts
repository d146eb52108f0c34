// What a set of blows is worth with all that comes after it: it moves the note, and what it shows makes the next sets surer.

import { choleskyOf, solveCholesky } from '../numbers/cholesky';
import { likelyOutcomes } from '../numbers/likely-outcomes';
import {
  diagonalOf,
  type Matrix3,
  mapThree,
  matrix3,
  partialIndices,
  type ThreePartials,
  times3,
} from '../numbers/three-partials';
import { changeOfErrors, covarianceOfErrors, type NoteErrors } from './note-errors';
import { type BlowPlan, measuring, type PlannedPlace, planBlows } from './plan-blows';
import type { Prediction } from './response-model';

/** A set at one place: what a usual set and this one are expected to do there. */
export interface Step {
  /** Number of the place in the plan. */
  readonly at: number;
  readonly strength: number;
  readonly usual: Pick<Prediction, 'doubt'>;
  readonly expected: Pick<Prediction, 'mean' | 'covariance'>;
}

/**
 * How wrong the best plan is expected to leave the note after this step: the mean over what the step may do, each
 * time with the note moved and the place known better (preposterior analysis; Raiffa & Schlaifer, Applied Statistical
 * Decision Theory, 1961; the update is that of a Kalman filter). `plan`: the best one before the step.
 */
export function leftAfter(
  errors: NoteErrors,
  places: readonly PlannedPlace[],
  plan: BlowPlan,
  { at, strength, usual, expected }: Step,
): number {
  const place = places[at];
  if (!place) return plan.left;
  const doubt = covarianceOfErrors(usual.doubt);
  const moving = covarianceOfErrors(expected.covariance);
  const seen = matrix3((i, j) => moving[i][j] + measuring[i][j]);
  const lower = choleskyOf(Float64Array.from(seen.flat()), 3);
  const shown = gainMatrix(doubt, strength, lower);
  const known = matrix3(
    (i, j) =>
      doubt[i][j] -
      strength * partialIndices.reduce<number>((sum, k) => sum + shown[i][k] * doubt[k][j], 0),
  );
  const triangle = matrix3((i, j) => lower[3 * i + j] ?? 0);
  const mean = changeOfErrors(expected.mean);
  const start = plan.strengths.map((each, p) => (p === at ? Math.max(0, each - strength) : each));
  const unsure = diagonalOf(known);
  const sum = likelyOutcomes.reduce((total, outcome) => {
    const surprise = times3(triangle, outcome);
    const lesson = times3(shown, surprise);
    const effect = mapThree(place.effect, (each, k) => each + lesson[k]);
    const values = mapThree(errors.values, (value, k) => value + mean[k] + surprise[k]);
    const later = places.with(at, { ...place, effect, doubt: unsure });
    return total + planBlows({ ...errors, values }, later, start).left;
  }, 0);
  return sum / likelyOutcomes.length;
}

/** How much of a surprise belongs to the effect of a usual set: strength · doubt · seen⁻¹. */
function gainMatrix(doubt: Matrix3, strength: number, lower: Float64Array): Matrix3 {
  return mapThree(doubt, (row): ThreePartials => {
    const [a = 0, b = 0, c = 0] = solveCholesky(lower, 3, Float64Array.from(row));
    return [strength * a, strength * b, strength * c];
  });
}
