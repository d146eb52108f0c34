// What one trial blow is worth: it costs or helps a little by itself, and afterwards it is known better what to do.
import type { MidiNote } from '../tuning/units';
import { blowGain } from './blow-gain';
import { type BlowWhere, strengthOf } from './blow-places';
import { choleskyOf } from './cholesky';
import { doses } from './choose-place';
import type { NoteErrors } from './note-errors';
import type { Prediction, ResponseModel } from './response-model';
import { blowScatter } from './response-noise';
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
const grid: readonly { readonly z: ThreePartials; readonly weight: number }[] = points.flatMap(
  (a) =>
    points.flatMap((b) =>
      points.map((c) => ({ z: [a.z, b.z, c.z] as const, weight: a.weight * b.weight * c.weight })),
    ),
);
/** One standard error of a measured change, cents, for what a trial can teach. */
const usualSigma = 0.3;

/**
 * Expected fall of the weighted error sum by one light blow and then the best set at the same place, or none if
 * the trial went badly (preposterior analysis; Raiffa & Schlaifer, Applied Statistical Decision Theory, 1961).
 */
export function trialGain(
  errors: NoteErrors,
  model: ResponseModel,
  note: MidiNote,
  where: BlowWhere,
): number {
  const strength = strengthOf('light', 1);
  const usual = model.predict(note, where);
  const trial = model.predict(note, where, strength);
  const learned = learnedPart(errors, trial, strength, usual);
  const left = matrix3((i, j) => (1 - learned) * usual.doubt[i][j]);
  const spread = triangleOf(usual.doubt);
  const after: NoteErrors = errors;
  let sum = 0;
  for (const { z, weight } of grid) {
    const effect = mapThree(usual.mean, (mean, k) => {
      const away = partialIndices.reduce<number>((part, j) => part + spread[k][j] * z[j], 0);
      return mean + Math.sqrt(learned) * away;
    });
    const gains = doses.map(
      ({ firmness, count }) =>
        blowGain(after, outcome(effect, left, strengthOf(firmness, count))).gain,
    );
    sum += weight * Math.max(0, ...gains);
  }
  return sum + Math.min(0, blowGain(errors, trial).gain);
}

/** Which part of the doubt one measured blow takes away. */
function learnedPart(
  { weights }: NoteErrors,
  trial: Prediction,
  strength: number,
  usual: Prediction,
): number {
  const noise = blowScatter(usual.mean, strength);
  const sum = (of: (k: 0 | 1 | 2) => number) =>
    partialIndices.reduce<number>((total, k) => total + weights[k] * of(k), 0);
  const doubt = sum((k) => trial.doubt[k][k]);
  return doubt / (doubt + sum((k) => noise[k][k] + usualSigma ** 2));
}

function outcome(effect: ThreePartials, doubt: Matrix3, strength: number) {
  const scatter = blowScatter(effect, strength);
  return {
    mean: mapThree(effect, (each) => strength * each),
    covariance: matrix3((i, j) => strength ** 2 * doubt[i][j] + scatter[i][j]),
    doubt: matrix3((i, j) => strength ** 2 * doubt[i][j]),
  };
}

function triangleOf(matrix: Matrix3): Matrix3 {
  const lower = choleskyOf(Float64Array.from(matrix.flat()), 3);
  return matrix3((i, j) => lower[3 * i + j] ?? 0);
}
