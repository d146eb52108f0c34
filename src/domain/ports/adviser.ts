// Answers the bench's questions, on whatever thread that takes its time.

import type { AdviceAnswer } from '../advice/answer-question';
import type { BenchQuestion } from '../bench/answer-on-bench';

export interface Adviser {
  /** Calls `tell` once, at once or later. Answers may come in another order than their questions. */
  ask(question: BenchQuestion, tell: (answer: AdviceAnswer) => void): void;
}

export interface NumberedQuestion {
  readonly ticket: number;
  readonly question: BenchQuestion;
}

export interface NumberedAnswer {
  readonly ticket: number;
  readonly answer: AdviceAnswer;
}
