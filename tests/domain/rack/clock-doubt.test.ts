import { describe, expect, it } from 'vitest';
import { clockDoubt } from '../../../src/domain/rack/clock-doubt';
import { instant } from '../../../src/domain/tuning/units';
import { agoWords, clockDoubtWords } from '../../../src/ui/words/rack-words';

const day = 24 * 3600 * 1000;
const now = instant(Date.UTC(2026, 10, 30, 12));
const builtAt = instant(now - 10 * day);
const later = (days: number) => instant(now + days * day);

describe('the clock of the phone', () => {
  it('is not doubted when it is later than the build and than all that is kept', () => {
    expect(clockDoubt(now, [builtAt])).toBeNull();
    // Another phone may be in another time zone.
    expect(clockDoubt(now, [builtAt, later(-1), later(0.9)])).toBeNull();
  });

  it('is doubted when it is days before the newest record, whose day is named', () => {
    const doubt = clockDoubt(now, [builtAt, later(3), later(2)]);
    expect(doubt).toBe(later(3));
    expect(clockDoubtWords(doubt ?? now, now)).toContain('3 Dec 2026');
  });

  it('is doubted when the app was built only after it', () => {
    expect(clockDoubt(now, [later(2)])).toBe(later(2));
  });
});

describe('a round that is dated in the future', () => {
  it('is not of today', () => {
    expect(agoWords(now, now)).toBe('today');
    expect(agoWords(later(3), now)).toBe('of 3 Dec 2026, to come');
    expect(agoWords(later(30_000), now)).toContain('to come');
  });
});
