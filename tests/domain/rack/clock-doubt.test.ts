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
    expect(clockDoubt({ now, builtAt, newest: null })).toBeNull();
    expect(clockDoubt({ now, builtAt, newest: later(-1) })).toBeNull();
    // Another phone may be in another time zone.
    expect(clockDoubt({ now, builtAt, newest: later(0.9) })).toBeNull();
  });

  it('is doubted when it is days before the newest record, and the record is named', () => {
    const doubt = clockDoubt({ now, builtAt, newest: later(3) });
    expect(doubt).toEqual({ kind: 'before-records', newest: later(3) });
    expect(doubt && clockDoubtWords(doubt, now)).toContain('3 Dec 2026');
  });

  it('is doubted when the app was built only after it', () => {
    const doubt = clockDoubt({ now, builtAt: later(2), newest: null });
    expect(doubt).toEqual({ kind: 'before-build' });
    expect(doubt && clockDoubtWords(doubt, now)).toContain('30 Nov 2026');
  });
});

describe('a round that is dated in the future', () => {
  it('is not of today', () => {
    expect(agoWords(now, now)).toBe('today');
    expect(agoWords(later(3), now)).toBe('dated 3 Dec 2026, which is still to come');
    expect(agoWords(later(30_000), now)).toContain('still to come');
  });
});
