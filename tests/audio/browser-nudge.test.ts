import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { BrowserNudge } from '../../src/audio/browser-nudge';

describe('the buzz of the phone', () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('is over when the phone is still again, so that none of it is heard as a strike', async () => {
    const asked: number[] = [];
    vi.stubGlobal('navigator', { vibrate: (ms: number) => asked.push(ms) > 0 });
    let isOver = false;
    const buzz = new BrowserNudge().buzz().then(() => {
      isOver = true;
    });
    const [length = 0] = asked;
    expect(length).toBeGreaterThan(0);
    await vi.advanceTimersByTimeAsync(length - 1);
    expect(isOver).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    await buzz;
    expect(isOver).toBe(true);
    expect(asked).toEqual([length]);
  });

  it('is nothing on a phone that cannot or will not', async () => {
    vi.stubGlobal('navigator', {});
    await new BrowserNudge().buzz();
    vi.stubGlobal('navigator', { vibrate: () => false });
    await new BrowserNudge().buzz();
    expect(vi.getTimerCount()).toBe(0);
  });

  it('and its tone end without a sound where there is no speaker', async () => {
    vi.stubGlobal('AudioContext', function none() {
      throw new Error('no speaker');
    });
    await expect(new BrowserNudge().tone()).resolves.toBeUndefined();
  });
});
