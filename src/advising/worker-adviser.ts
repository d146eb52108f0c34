// The page's side of the advice thread: begun with the first question; if it dies, the page answers by itself.
import type { AdviceAnswer } from '../domain/advice/answer-question';
import type { BenchQuestion } from '../domain/bench/answer-on-bench';
import type { Adviser, NumberedAnswer, NumberedQuestion } from '../domain/ports/adviser';

/**
 * A question not answered after this time, ms, is answered on the page (chosen, no source); an answer takes tens of ms.
 */
const longest = 4000;

interface Waiting {
  readonly question: BenchQuestion;
  readonly tell: (answer: AdviceAnswer) => void;
  readonly timer: ReturnType<typeof setTimeout>;
}

export class WorkerAdviser implements Adviser {
  readonly #waiting = new Map<number, Waiting>();
  /** Undefined: not begun. Null: died, and is not begun again. */
  #worker: Worker | null | undefined;
  #tickets = 0;

  ask(question: BenchQuestion, tell: (answer: AdviceAnswer) => void): void {
    if (this.#worker === undefined) this.#worker = this.#open();
    if (this.#worker === null) {
      void answerHere(question, tell);
      return;
    }
    const ticket = ++this.#tickets;
    const timer = setTimeout(() => this.#fail(), longest);
    this.#waiting.set(ticket, { question, tell, timer });
    this.#worker.postMessage({ ticket, question } satisfies NumberedQuestion);
  }

  #open(): Worker {
    const worker = new Worker(new URL('./worker/advice.worker.ts', import.meta.url), {
      type: 'module',
    });
    worker.onmessage = ({ data: { ticket, answer } }: MessageEvent<NumberedAnswer>) => {
      const asked = this.#waiting.get(ticket);
      if (!asked) return;
      clearTimeout(asked.timer);
      this.#waiting.delete(ticket);
      asked.tell(answer);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      this.#fail();
    };
    return worker;
  }

  #fail(): void {
    if (this.#worker) {
      this.#worker.onmessage = null;
      this.#worker.onerror = null;
      this.#worker.terminate();
    }
    this.#worker = null;
    const unanswered = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { question, tell, timer } of unanswered) {
      clearTimeout(timer);
      void answerHere(question, tell);
    }
  }
}

/** Loaded only when it is needed: the thread has its own copy. */
async function answerHere(
  question: BenchQuestion,
  tell: (answer: AdviceAnswer) => void,
): Promise<void> {
  const { answerOnBench } = await import('../domain/bench/answer-on-bench');
  tell(answerOnBench(question));
}
