// Whether a sound is a struck note at all: one fitted score over all that speaks for and against it.
import { blowWeights } from '../note/ear-weights';
import type { NoteEvidence } from '../note/note-features';
import { inOrder, scoreOf } from '../numbers/fitted-score';
import type { TimedLine } from '../spectrum/line-course';
import { type StruckSound, strikeFeatureNames, strikeFeatures } from './strike-features';

/** Odds of a strike, nepers: from here on it is one; below the second it is a knock; between them nobody knows. */
export const surelyStruck = 0;
export const surelyKnock = -6;

const weights = inOrder(strikeFeatureNames, blowWeights);

/** Odds, natural logarithm, that `sound` is a strike on the note with the fundamental `line` and the features `chosen`. */
export const oddsOfStrike = (
  sound: StruckSound,
  evidence: NoteEvidence,
  line: TimedLine,
  chosen: Float64Array,
): number =>
  (blowWeights['always'] ?? 0) + scoreOf(strikeFeatures(sound, evidence, line, chosen), weights);
