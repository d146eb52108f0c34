import { afterEach, describe, expect, it, vi } from 'vitest';
import { BrowserStorageHealth } from '../../../src/storage/browser/browser-storage-health';

const health = new BrowserStorageHealth();
const browserWith = (storage: unknown) => vi.stubGlobal('navigator', { storage });
afterEach(() => {
  vi.unstubAllGlobals();
});

describe('the storage of the app', () => {
  it('is looked at without asking for anything', async () => {
    const persist = vi.fn();
    browserWith({
      persisted: async () => false,
      persist,
      estimate: async () => ({ usage: 5, quota: 9 }),
    });
    expect(await health.look()).toEqual({
      durability: 'best-effort',
      usedBytes: 5,
      mostBytes: 9,
    });
    expect(persist).not.toHaveBeenCalled();
  });

  it('is asked to be kept once, and never again when that was promised', async () => {
    let promised = false;
    const persist = vi.fn(async () => {
      promised = true;
      return true;
    });
    browserWith({ persisted: async () => promised, persist });
    expect(await health.askToKeep()).toBe('persistent');
    expect(await health.askToKeep()).toBe('persistent');
    expect(persist).toHaveBeenCalledTimes(1);
  });

  it('may be cleared when the browser declines', async () => {
    browserWith({ persisted: async () => false, persist: async () => false });
    expect(await health.askToKeep()).toBe('best-effort');
  });

  it.each([
    ['an old browser', undefined],
    ['a browser without promises', {}],
    [
      'a browser that refuses to say',
      {
        persisted: () => Promise.reject(new TypeError('no')),
        persist: () => {
          throw new DOMException('private', 'SecurityError');
        },
        estimate: () => Promise.reject(new TypeError('no')),
      },
    ],
  ])('is unknown in %s', async (_name, storage) => {
    browserWith(storage);
    expect(await health.look()).toEqual({
      durability: 'unknown',
      usedBytes: null,
      mostBytes: null,
    });
    expect(await health.askToKeep()).toBe('unknown');
  });
});
