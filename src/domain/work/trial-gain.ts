// What one trial blow is worth: it costs or helps a little by itself, and afterwards it is known better what to do.
import { blowGain } from './blow-gain';
import { strengthOf } from './blow-places';
import { choleskyOf } from './cholesky';
import { covarianceOfErrors, type NoteErrors } from './note-errors';
import { type BlowPlan, type PlannedPlace, placeLearned, planBlows } from './plan-blows';
import type { Prediction } from './response-model';
import {
  type Matrix3,
  mapThree,
  matrix3,
  partialIndices,
  type ThreePartials,
} from './three-partials';

/** Five points and weights for the mean over a standard normal value (Gauss–Hermite; Abramowitz & Stegun 25.4.46). */
const points = [
  { z: 0, weight: 8 / 15 },
  ...[1, -1].flatMap((side) => [
    { z: side * Math.sqrt(5 - Math.sqrt(10)), weight: (7 + 2 * Math.sqrt(10)) / 60 },
    { z: side * Math.sqrt(5 + Math.sqrt(10)), weight: (7 - 2 * Math.sqrt(10)) / 60 },
  ]),
];
/** Pairs and triples of the outermost points weigh next to nothing and are left out. */
const grid: readonly { readonly z: ThreePartials; readonly weight: number }[] = points
  .flatMap((a) =>
    points.flatMap((b) =>
      points.map((c) => ({ z: [a.z, b.z, c.z] as const, weight: a.weight * b.weight * c.weight })),
    ),
  )
  .filter(({ weight }) => weight > 0.005);
/** One standard error of a measured change, cents, for what a trial can teach. */
const usualSigma = 0.3;

/**
 * By how much a single light blow at place number `at` improves what the best plan is expected to leave, because
 * its effect is known better then, less the harm it is expected to do (preposterior analysis; Raiffa & Schlaifer,
 * Applied Statistical Decision Theory, 1961). `plan` is the best one for `places` as they are known; `usual` and `trial`: what a usual set and one blow do there.
 */
export function trialGain(
  errors: NoteErrors,
  places: readonly PlannedPlace[],
  plan: BlowPlan,
  at: number,
  usual: Prediction,
  trial: Prediction,
): number {
  const place = places[at];
  if (!place) return 0;
  const learned = learnedPart(errors, trial);
  const spread = triangleOf(covarianceOfErrors(usual.doubt));
  const share = Math.sqrt(learned);
  let left = 0;
  let weights = 0;
  for (const { z, weight } of grid) {
    const away = mapThree(partialIndices, (k) =>
      partialIndices.reduce<number>((sum, j) => sum + share * spread[k][j] * z[j], 0),
    );
    const known = places.with(at, placeLearned(place, away, 1 - learned));
    left += weight * planBlows(errors, known, plan.strengths).left;
    weights += weight;
  }
  const cost = Math.max(0, -blowGain(errors, trial).gain);
  return plan.left - left / weights - cost;
}

/** Which part of the doubt about a place one measured blow takes away. */
function learnedPart({ weights }: NoteErrors, { doubt, covariance }: Prediction): number {
  const sum = (of: (k: 0 | 1 | 2) => number) =>
    partialIndices.reduce<number>((total, k) => total + weights[k] * of(k), 0);
  return sum((k) => doubt[k][k]) / sum((k) => covariance[k][k] + usualSigma ** 2);
}

/** The gentlest set there is. */
export const trialStrength = strengthOf('light', 1);

function triangleOf(matrix: Matrix3): Matrix3 {
  const lower = choleskyOf(Float64Array.from(matrix.flat()), 3);
  return matrix3((i, j) => lower[3 * i + j] ?? 0);
}
