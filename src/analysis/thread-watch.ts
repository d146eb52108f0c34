// Notices that a thread has ended without a word: it is asked now and then, and must say something.

/** How often the thread is asked, ms (this and the next two: chosen, no source). */
const askEvery = 4000;
/** One that has said nothing at all for this long after a question is taken for dead, ms. */
const patience = 10_000;
/**
 * A question that comes this late, ms, was held up with the whole page (another app was in front), so nothing is known.
 */
const held = 2 * askEvery;

export class ThreadWatch {
  #timer: ReturnType<typeof setInterval> | undefined;
  #lastTick = 0;
  /** When the first question was asked to which nothing has come; null: the thread has spoken since the last one. */
  #askedAt: number | null = null;

  /** The thread answers `ask` with any message. */
  constructor(
    readonly ask: () => void,
    readonly onSilence: () => void,
  ) {}

  begin(): void {
    this.end();
    this.#lastTick = performance.now();
    this.#timer = setInterval(() => this.#tick(), askEvery);
  }

  end(): void {
    clearInterval(this.#timer);
    this.#timer = undefined;
    this.#askedAt = null;
  }

  /** The thread has said something, whatever it was. */
  spoke(): void {
    this.#askedAt = null;
  }

  #tick(): void {
    const now = performance.now();
    const isHeld = now - this.#lastTick > held;
    this.#lastTick = now;
    if (isHeld) this.#askedAt = null;
    if (this.#askedAt !== null && now - this.#askedAt >= patience) {
      this.end();
      this.onSilence();
      return;
    }
    this.#askedAt ??= now;
    this.ask();
  }
}
