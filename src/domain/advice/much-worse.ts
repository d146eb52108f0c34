// How likely a set of blows makes a note much worse than it was when the bench was opened.

import { mapThree, type PartialIndex, partialIndices } from '../numbers/three-partials';
import { normalAbove } from './blow-gain';
import { changeOfErrors, covarianceOfErrors, isJudged, type NoteErrors } from './note-errors';
import type { Prediction } from './response-model';

/**
 * Much worse: a partial is this much farther off than it was at the opening, or than its limit, cents (chosen, no
 * source).
 */
const muchWorse = 5;
/**
 * How often a blow lands far too hard, and how many blows it then counts as (own guesses, the practice pan's for
 * light blows).
 */
const tooHard = { chance: 0.02, worth: 2.5 };

/** Expected number of partials that a set of `count` blows makes much worse; those that already are do not count. */
export function expectedMuchWorse(
  errors: NoteErrors,
  opening: Pick<NoteErrors, 'values'>,
  { mean, covariance }: Pick<Prediction, 'mean' | 'covariance'>,
  count: number,
): number {
  const { values, limits } = errors;
  const lines = mapThree(
    limits,
    (limit, k) => Math.max(limit, Math.abs(opening.values[k])) + muchWorse,
  );
  const change = changeOfErrors(mean);
  const spread = covarianceOfErrors(covariance);
  const beyond = (k: PartialIndex, stretched: number): number => {
    const deviation = stretched * Math.sqrt(spread[k][k]);
    const after = values[k] + stretched * change[k];
    return (
      normalAbove((lines[k] - after) / deviation) + normalAbove((lines[k] + after) / deviation)
    );
  };
  const slips = 1 - (1 - tooHard.chance) ** count;
  const withSlip = (count - 1 + tooHard.worth) / count;
  return partialIndices
    .filter((k) => isJudged(errors, k) && Math.abs(values[k]) <= lines[k])
    .reduce<number>((sum, k) => sum + (1 - slips) * beyond(k, 1) + slips * beyond(k, withSlip), 0);
}
