import { describe, expect, it } from 'vitest';
import { SampleClock } from '../../src/audio/sample-clock';

const frames = 2048;

/** Feeds blocks at `actualRate` for `seconds`, `jitter` ms early or late in turn; true if ever found wrong. */
const judged = (
  clock: SampleClock,
  { actualRate = 48_000, seconds = 30, jitter = 0, from = 0 } = {},
): boolean => {
  let wrong = false;
  const step = (1000 * frames) / actualRate;
  for (let n = 0; n * step < 1000 * seconds; n++) {
    const at = from + n * step + (n % 2 ? jitter : -jitter);
    wrong = clock.isWrongAfter({ peak: 0, frames, at }) || wrong;
  }
  return wrong;
};

describe('the sample clock', () => {
  it('is content with a microphone at its own rate, however uneven its blocks are', () => {
    expect(judged(new SampleClock(48_000), { jitter: 20 })).toBe(false);
    expect(judged(new SampleClock(44_100), { actualRate: 44_100 })).toBe(false);
  });

  it('finds 44.1 kHz taken for 48 kHz and the reverse', () => {
    expect(judged(new SampleClock(48_000), { actualRate: 44_100, jitter: 20 })).toBe(true);
    expect(judged(new SampleClock(44_100), { actualRate: 48_000, jitter: 20 })).toBe(true);
  });

  it('does not judge before 10 s', () => {
    expect(judged(new SampleClock(48_000), { actualRate: 16_000, seconds: 9 })).toBe(false);
  });

  it('does not take a pause for slowness', () => {
    const clock = new SampleClock(48_000);
    expect(judged(clock, { seconds: 9 })).toBe(false);
    expect(judged(clock, { seconds: 30, from: 15_000 })).toBe(false);
  });
});
