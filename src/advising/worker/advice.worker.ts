// The thread of the advice: a shell that carries questions in and answers out.
import { answerTo } from '../../domain/advice/answer-question';
import type { NumberedAnswer, NumberedQuestion } from '../../domain/ports/adviser';

self.onmessage = ({ data: { ticket, question } }: MessageEvent<NumberedQuestion>) =>
  self.postMessage({ ticket, answer: answerTo(question) } satisfies NumberedAnswer);
