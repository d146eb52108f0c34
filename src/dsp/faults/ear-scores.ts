// The ear's two fitted scores, with their weights in the order of the features.

import { earWeights } from '../note/ear-weights';
import { noteFeatureNames } from '../note/note-features';
import { inOrder, scoreOf, type Weights } from '../numbers/fitted-score';
import { strikeFeatureNames } from './strike-features';

export interface EarWeights {
  /** What the features of a note (`note-features`) are worth in the choice of the note, nepers a unit. */
  readonly note: Weights;
  /** What it is worth that a note is the one that is to be struck, nepers. */
  readonly expected: number;
  /** What the features of a sound (`strike-features`) are worth for its being a strike, nepers a unit; `always` to all. */
  readonly strike: Weights;
}

export interface EarScores {
  readonly ofNote: (features: readonly number[]) => number;
  readonly forExpected: number;
  /** Odds of a strike, natural logarithm. */
  readonly ofStrike: (features: readonly number[]) => number;
}

export function earScores(weights: EarWeights): EarScores {
  const note = inOrder(noteFeatureNames, weights.note);
  const strike = inOrder(strikeFeatureNames, weights.strike);
  const always = weights.strike['always'] ?? 0;
  return {
    ofNote: (features) => scoreOf(features, note),
    forExpected: weights.expected,
    ofStrike: (features) => always + scoreOf(features, strike),
  };
}

/** The scores that the ear goes by. */
export const ownScores = earScores(earWeights);
