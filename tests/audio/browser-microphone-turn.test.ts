// Against a lock manager of a few lines that does what the Web Locks specification says of `ifAvailable`;
// the browser's own is in tests/browser.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { BrowserMicrophoneTurn } from '../../src/audio/browser-microphone-turn';

class Locks {
  readonly #held = new Set<string>();

  async request(name: string, _options: object, work: (lock: object | null) => unknown) {
    await Promise.resolve();
    if (this.#held.has(name)) return work(null);
    this.#held.add(name);
    try {
      return await work({ name });
    } finally {
      // A released lock is free a little later, as between processes.
      await new Promise((free) => setTimeout(free, 5));
      this.#held.delete(name);
    }
  }
}

beforeEach(() => {
  vi.stubGlobal('navigator', { locks: new Locks() });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

describe('the microphone', () => {
  it('belongs to the window that took it first, until that one lets go', async () => {
    const first = new BrowserMicrophoneTurn();
    const second = new BrowserMicrophoneTurn();
    expect(await first.take()).toBe('ours');
    expect(await second.take()).toBe('other-window');
    first.release();
    await vi.waitFor(async () => expect(await second.take()).toBe('ours'));
    expect(await first.take()).toBe('other-window');
  });

  it('can be taken twice, and again right after it was let go', async () => {
    const turn = new BrowserMicrophoneTurn();
    expect(await turn.take()).toBe('ours');
    expect(await turn.take()).toBe('ours');
    turn.release();
    expect(await turn.take()).toBe('ours');
    turn.release();
    turn.release();
    expect(await turn.take()).toBe('ours');
  });

  it('is free in a browser without locks, and in one that refuses them', async () => {
    vi.stubGlobal('navigator', {});
    expect(await new BrowserMicrophoneTurn().take()).toBe('ours');
    const request = () => Promise.reject(new DOMException('no', 'SecurityError'));
    vi.stubGlobal('navigator', { locks: { request } });
    const turn = new BrowserMicrophoneTurn();
    expect(await turn.take()).toBe('ours');
    turn.release();
    expect(await turn.take()).toBe('ours');
  });
});
