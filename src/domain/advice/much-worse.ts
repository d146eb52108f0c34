// How likely a set of blows makes a note much worse than it was when the bench was opened.

import { type PartialIndex, partialIndices } from '../numbers/three-partials';
import { normalAbove } from './blow-gain';
import {
  changeOfErrors,
  covarianceOfErrors,
  farthestOff,
  isJudged,
  type NoteErrors,
} from './note-errors';
import type { Prediction } from './response-model';

/** Much worse: some partial is this much farther off than the worst one was at the opening, cents. */
const muchWorse = 5;
/**
 * How often a blow lands far too hard, and how many blows it then counts as (own guesses, the practice pan's for
 * light blows).
 */
const tooHard = { chance: 0.02, worth: 2.5 };

/** Expected number of partials that a set of `count` blows makes much worse; what is so already is not counted. */
export function expectedMuchWorse(
  errors: NoteErrors,
  opening: Pick<NoteErrors, 'values'>,
  { mean, covariance }: Pick<Prediction, 'mean' | 'covariance'>,
  count: number,
): number {
  const { values, weights } = errors;
  const line = farthestOff({ values: opening.values, weights }) + muchWorse;
  const change = changeOfErrors(mean);
  const spread = covarianceOfErrors(covariance);
  const beyond = (k: PartialIndex, stretched: number): number => {
    const deviation = stretched * Math.sqrt(spread[k][k]);
    const after = values[k] + stretched * change[k];
    return normalAbove((line - after) / deviation) + normalAbove((line + after) / deviation);
  };
  const slips = 1 - (1 - tooHard.chance) ** count;
  const withSlip = (count - 1 + tooHard.worth) / count;
  return partialIndices
    .filter((k) => isJudged(errors, k) && Math.abs(values[k]) <= line)
    .reduce<number>((sum, k) => sum + (1 - slips) * beyond(k, 1) + slips * beyond(k, withSlip), 0);
}
