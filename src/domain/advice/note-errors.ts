// How far off a note's partials are, as they are judged, and how much each counts when it is worked on.

import {
  type Matrix3,
  mapThree,
  matrix3,
  type PartialIndex,
  partialIndices,
  type ThreePartials,
} from '../numbers/three-partials';
import type { ToleranceSet } from '../tuning/tolerances';
import { allowedFor, type Judged } from '../tuning/verdict';
import type { BlowSet } from './blow-sets';

export interface NoteErrors {
  /** Fundamental against its target; octave and third against the own fundamental. 0 where not judged. */
  readonly values: ThreePartials;
  /** The user's limits for "good", cents; no finer than the errors where the fundamental is inferred. */
  readonly limits: ThreePartials;
  /** 1 / limit², so that a partial at its limit counts 1; 0 for a partial that is not judged. */
  readonly weights: ThreePartials;
}

/** Top notes are judged by their fundamental only, and an octave that may be a partner's is not judged. */
export function noteErrors(judged: Judged, limits: ToleranceSet): NoteErrors {
  const { main, third: thirdLimit } = limits.good;
  const isTop = judged.note > limits.highestWithPartials;
  const octave = isTop || judged.octaveRival ? null : judged.octave;
  const third = isTop ? null : judged.third;
  const weight = (limit: number): number => 1 / Math.max(limit, 1) ** 2;
  return {
    values: [judged.fundamental.cents, octave?.centsFromOwn ?? 0, third?.centsFromOwn ?? 0],
    limits: [
      allowedFor(judged, judged.fundamental, main),
      allowedFor(judged, octave ?? {}, main),
      allowedFor(judged, third ?? {}, thirdLimit),
    ],
    weights: [weight(main), octave ? weight(main) : 0, third ? weight(thirdLimit) : 0],
  };
}

export const isJudged = ({ weights }: NoteErrors, k: 0 | 1 | 2): boolean => weights[k] > 0;

/**
 * The partials outside their limit. Not rounded as on the readout: what reads 5 may be 5.4, which is not within 5 yet.
 */
export const partialsOff = ({ values, limits, weights }: NoteErrors): readonly PartialIndex[] =>
  partialIndices.filter((k) => weights[k] > 0 && Math.abs(values[k]) > limits[k]);

/** Weighted sum of squares: 1 for one partial at its limit. */
export const errorSum = ({ values, weights }: Pick<NoteErrors, 'values' | 'weights'>): number =>
  values.reduce((sum, value, k) => sum + (weights[k] ?? 0) * value ** 2, 0);

/** Changes of partials against fixed targets as changes of the errors: octave and third go by the own fundamental. */
export const changeOfErrors = ([fundamental, octave, third]: ThreePartials): ThreePartials => [
  fundamental,
  octave - fundamental,
  third - fundamental,
];

/** The errors before these sets, which are the last ones on the note. What was not measured counts as moved along. */
export function errorsBefore(
  { values }: Pick<NoteErrors, 'values'>,
  sets: readonly Pick<BlowSet, 'change'>[],
): ThreePartials {
  return sets.reduce<ThreePartials>((now, { change: [fundamental, octave, third] }) => {
    const known = fundamental ?? 0;
    const moved = changeOfErrors([known, octave ?? known, third ?? known]);
    return mapThree(now, (value, k) => value - moved[k]);
  }, values);
}

/** What `changeOfErrors` makes of the covariance of such changes: C·V·Cᵀ with the rows of `changeOfErrors` as C. */
export const covarianceOfErrors = (covariance: Matrix3): Matrix3 => {
  const turned = mapThree(covariance, changeOfErrors);
  const column = (k: 0 | 1 | 2): ThreePartials =>
    changeOfErrors([turned[0][k], turned[1][k], turned[2][k]]);
  const columns = mapThree(partialIndices, column);
  return matrix3((i, j) => columns[j][i]);
};
