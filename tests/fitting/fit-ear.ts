// Both scores of the ear fitted on the same examples, and how well they do on examples they were not fitted on.
import type { EarWeights } from '../../src/dsp/faults/ear-scores';
import { strikeFeatureNames } from '../../src/dsp/faults/strike-features';
import { noteFeatureNames } from '../../src/dsp/note/note-features';
import type { SeenExample } from './ear-features';
import { type Choice, dot, fitChoices, fitQuestions, type Question } from './fits';

/** Weights in the order of the features; `strike` begins with what counts always. */
export interface FittedEar {
  readonly note: Float64Array;
  readonly strike: Float64Array;
}

/** How much an example of each kind counts: recordings are what the ear is for. */
const weightOf: Readonly<Record<string, number>> = {
  real: 1,
  varied: 2,
  bank: 1,
  hard: 0.7,
  scene: 0.5,
  bass: 1,
};
/** … and in the question whether it is a strike: what is none must be kept out. */
const strikeWeightOf: Readonly<Record<string, number>> = {
  ...weightOf,
  real: 1.5,
  varied: 0.3,
  bank: 2,
  drum: 1.5,
  speech: 2,
  blow: 1.5,
};
/** Prior precision of each weight, for a feature of unit deviation. */
const ridge = 5;
const ridgeOfStrike = 2;
/** A candidate this near to the struck fundamental is it, cents. */
const reach = 60;

/** A bass note's fundamental may not be heard: its octave then stands for it. */
const isOn = (each: SeenExample, hz: number): boolean =>
  each.hz !== null && Math.abs(1200 * Math.log2(hz / ((each.isHidden ? 2 : 1) * each.hz))) <= reach;

/** Index of the best candidate; −1 where there is none. */
export function bestOf(each: SeenExample, note: Float64Array): number {
  let best = -1;
  let top = Number.NEGATIVE_INFINITY;
  each.candidates.forEach(({ features }, n) => {
    const score = dot(features, note);
    if (score <= top) return;
    best = n;
    top = score;
  });
  return best;
}

export function isNamed(each: SeenExample, note: Float64Array): boolean {
  const chosen = each.candidates[bestOf(each, note)];
  return chosen !== undefined && isOn(each, chosen.hz);
}

const choiceOf = (each: SeenExample): Choice => {
  // Other lines on the same fundamental are neither right nor wrong.
  const kept = each.candidates.filter(({ hz }, n) => n === each.right || !isOn(each, hz));
  const own = each.candidates[each.right];
  const right = own ? kept.indexOf(own) : -1;
  return {
    candidates: kept.map(({ features }) => features),
    right,
    weight: weightOf[each.kind] ?? 1,
  };
};

const withOne = (features: Float64Array): Float64Array => {
  const all = new Float64Array(features.length + 1);
  all[0] = 1;
  all.set(features, 1);
  return all;
};

/** The question whether `each` is a strike, by its best candidate; null where that is another note, or there is none. */
export function questionOf(each: SeenExample, note: Float64Array): Question | null {
  const chosen = each.candidates[bestOf(each, note)];
  const isYes = each.hz !== null;
  if (!chosen || (isYes && !isOn(each, chosen.hz))) return null;
  return { features: withOne(chosen.asStrike), isYes, weight: strikeWeightOf[each.kind] ?? 1 };
}

export function fitEar(examples: readonly SeenExample[], start?: FittedEar): FittedEar {
  const choices = examples.filter(({ right }) => right >= 0).map(choiceOf);
  const note = fitChoices(choices, ridge, start?.note);
  const questions = examples.flatMap((each) => questionOf(each, note) ?? []);
  return { note, strike: fitQuestions(questions, ridgeOfStrike, start?.strike) };
}

export const weightsOf = ({ note, strike }: FittedEar, expected: number): EarWeights => ({
  note: Object.fromEntries(noteFeatureNames.map((name, k) => [name, note[k] ?? 0])),
  expected,
  strike: Object.fromEntries(
    ['always', ...strikeFeatureNames].map((name, k) => [name, strike[k] ?? 0]),
  ),
});
