// Who answers questions of the bench, wherever that takes its time.

import type { AdviceAnswer, AdviceQuestion } from '../advice/answer-question';

export interface Adviser {
  /** Calls `tell` once, at once or later. Answers may come in another order than their questions. */
  ask(question: AdviceQuestion, tell: (answer: AdviceAnswer) => void): void;
}

export interface NumberedQuestion {
  readonly ticket: number;
  readonly question: AdviceQuestion;
}

export interface NumberedAnswer {
  readonly ticket: number;
  readonly answer: AdviceAnswer;
}
