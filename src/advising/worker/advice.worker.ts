// The thread of the advice: a shell that carries questions in and answers out.
import { answerOnBench } from '../../domain/bench/answer-on-bench';
import type { NumberedAnswer, NumberedQuestion } from '../../domain/ports/adviser';

self.onmessage = ({ data: { ticket, question } }: MessageEvent<NumberedQuestion>) =>
  self.postMessage({ ticket, answer: answerOnBench(question) } satisfies NumberedAnswer);
