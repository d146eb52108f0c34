// One question about a note on the bench and its complete answer: what the advice thread is asked.

import type { Instant } from '../tuning/units';
import { type Advice, type AdviceRules, adviceFor, type BenchNote } from './advice';
import { type BlowSet, noteTraits } from './blow-sets';
import { learnResponse, type ResponseModel } from './response-model';

export interface AdviceQuestion {
  readonly note: BenchNote;
  readonly rules: AdviceRules;
  /** All sets of the pan, what its response is learned from. */
  readonly panSets: readonly BlowSet[];
  /** Says how old the sets are. */
  readonly now: Instant;
}

export interface AdviceAnswer {
  readonly advice: Advice;
  /** How many sets of this pan fell where blows are suggested now, from the same side. */
  readonly setsHere: number;
  /** The newest set did what the others of this pan contradict. */
  readonly isSurprise: boolean;
}

/** A set is compared only with at least this many others (chosen, no source). */
const fewest = 3;

export function answerTo({ note, rules, panSets, now }: AdviceQuestion): AdviceAnswer {
  const model = lazily(() => learnResponse(panSets, noteTraits(note.layout), now));
  const advice = adviceFor(note, model, rules);
  const newest = note.sets.at(-1);
  return {
    advice,
    setsHere: panSets.filter(
      ({ place, side }) =>
        advice.kind === 'blows' && place === advice.place && side === advice.side,
    ).length,
    isSurprise: panSets.length > fewest && newest !== undefined && model.isContradicting(newest),
  };
}

/** Learning takes time that is only spent where a place is to be chosen. */
function lazily(learn: () => ResponseModel): ResponseModel {
  let learned: ResponseModel | null = null;
  const model = (): ResponseModel => {
    learned ??= learn();
    return learned;
  };
  return {
    predict: (...where) => model().predict(...where),
    isContradicting: (set) => model().isContradicting(set),
    get setCount() {
      return model().setCount;
    },
  };
}
