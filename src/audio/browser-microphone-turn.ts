// One window owns the microphone: a lock that all windows of the app share.
import type { MicrophoneTurn } from '../domain/ports/microphone-ports';

const lockName = 'ringwright-microphone';

interface Held {
  readonly letGo: () => void;
  /** Resolves once the lock is free for others. */
  readonly over: Promise<unknown>;
}

export class BrowserMicrophoneTurn implements MicrophoneTurn {
  #held: Held | null = null;
  /** One change at a time: a lock that is being released is not free yet. */
  #changes: Promise<unknown> = Promise.resolve();

  take(): Promise<'ours' | 'other-window'> {
    return this.#next(async () => {
      // An old browser has no locks; two windows are then as good as it can do.
      if (this.#held || !navigator.locks) return 'ours';
      this.#held = await requestLock(navigator.locks);
      return this.#held ? 'ours' : 'other-window';
    });
  }

  release(): void {
    void this.#next(async () => {
      const held = this.#held;
      this.#held = null;
      held?.letGo();
      await held?.over;
    });
  }

  /** True while any window of the app has the microphone, this one too. */
  async isTaken(): Promise<boolean> {
    // An old browser has no locks: it can speak for this window only.
    if (!navigator.locks) return this.#held !== null;
    const { held = [] } = await navigator.locks.query();
    return held.some(({ name }) => name === lockName);
  }

  #next<T>(change: () => Promise<T>): Promise<T> {
    const result = this.#changes.then(change);
    this.#changes = result.catch(() => undefined);
    return result;
  }
}

/** The lock, or null if another window has it. A browser that refuses locks altogether counts as free. */
function requestLock(locks: LockManager): Promise<Held | null> {
  return new Promise((done) => {
    const over = locks
      .request(lockName, { ifAvailable: true }, (lock) => {
        if (!lock) return done(null);
        return new Promise<void>((letGo) => done({ letGo, over }));
      })
      .catch(() => done({ letGo: () => undefined, over: Promise.resolve() }));
  });
}
