// How much a set of blows is expected to reduce a note's error, and how sure that is.

import {
  type Matrix3,
  mapThree,
  partialIndices,
  type ThreePartials,
  times3,
} from '../numbers/three-partials';
import {
  changeOfErrors,
  covarianceOfErrors,
  errorSum,
  isJudged,
  type NoteErrors,
} from './note-errors';
import type { Prediction } from './response-model';

export interface BlowGain {
  /** Expected fall of the weighted error sum. Scatter and doubt raise the sum, so the risk of overshoot is in it. */
  readonly gain: number;
  /** One standard deviation of the expected gain, from what is not known about this place. */
  readonly doubt: number;
  /** Probability that some partial ends outside its limit on the other side than now, or leaves it. */
  readonly overshoot: number;
  /** How many cents farther off than now a partial may end up, in the 2σ worst case. */
  readonly worsening: number;
  /** The same against `bounds`. */
  readonly harm: number;
}

/**
 * What a set of blows with this outcome is worth. `bounds`: how far off each partial may be without counting as harmed.
 * Moments of a quadratic form of normal values: Mathai & Provost, Quadratic Forms in Random Variables, 1992, ch. 3.
 */
export function blowGain(
  errors: NoteErrors,
  prediction: Pick<Prediction, 'mean' | 'covariance' | 'doubt'>,
  bounds: ThreePartials,
): BlowGain {
  const { values, weights, limits } = errors;
  const change = changeOfErrors(prediction.mean);
  const spread = covarianceOfErrors(prediction.covariance);
  const doubt = covarianceOfErrors(prediction.doubt);
  const after = mapThree(values, (value, k) => value + change[k]);
  const expected =
    errorSum({ values: after, weights }) +
    partialIndices.reduce<number>((sum, k) => sum + weights[k] * spread[k][k], 0);
  const worstBeyond = (allowed: ThreePartials): number =>
    Math.max(...partialIndices.map((k) => worst(errors, allowed[k], k, after[k], spread[k][k])));
  const pull = mapThree(after, (value, k) => weights[k] * value);
  const linear =
    4 * partialIndices.reduce<number>((sum, k) => sum + pull[k] * times3(doubt, pull)[k], 0);
  return {
    gain: errorSum(errors) - expected,
    doubt: Math.sqrt(linear + 2 * traceOfSquare(weights, doubt)),
    overshoot: Math.max(
      ...partialIndices.map((k) => chanceBeyond(errors, k, after[k], spread[k][k])),
    ),
    worsening: worstBeyond(mapThree(values, (value, k) => Math.max(limits[k], Math.abs(value)))),
    harm: worstBeyond(bounds),
  };
}

const traceOfSquare = (weights: ThreePartials, matrix: Matrix3): number =>
  partialIndices.reduce<number>(
    (sum, i) =>
      sum +
      partialIndices.reduce<number>(
        (part, j) => part + weights[i] * weights[j] * matrix[i][j] ** 2,
        0,
      ),
    0,
  );

function chanceBeyond(errors: NoteErrors, k: 0 | 1 | 2, after: number, variance: number): number {
  if (!isJudged(errors, k)) return 0;
  // Upwards for a flat partial.
  const way = errors.values[k] > 0 ? -1 : 1;
  return normalAbove((errors.limits[k] - way * after) / Math.sqrt(variance));
}

/** How many standard deviations away the worst case is assumed to lie (chosen, no source). */
const worstCase = 2;

function worst(
  errors: NoteErrors,
  bound: number,
  k: 0 | 1 | 2,
  after: number,
  variance: number,
): number {
  return isJudged(errors, k) ? Math.abs(after) + worstCase * Math.sqrt(variance) - bound : 0;
}

/** Room taken away from a partial that is already farther off than at the opening, cents (chosen, no source). */
const back = 1;

/** Each partial may be as far off as it was at the opening; one that is already farther off may stay where it is. */
export function boundsOf(
  { values, limits }: NoteErrors,
  opening: Pick<NoteErrors, 'values'>,
): ThreePartials {
  return mapThree(values, (value, k) =>
    Math.max(limits[k], Math.abs(opening.values[k]), Math.abs(value) - back),
  );
}

/** Probability that a standard normal value is above `z` (Abramowitz & Stegun 26.2.17, error below 7.5·10⁻⁸). */
export function normalAbove(z: number): number {
  if (z < 0) return 1 - normalAbove(-z);
  const t = 1 / (1 + 0.2316419 * z);
  const series =
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return (series * Math.exp(-(z ** 2) / 2)) / Math.sqrt(2 * Math.PI);
}
