import { describe, expect, it } from 'vitest';
import { isLost, restoreTrace, traceText } from '../../../src/domain/rack/rack-trace';
import { instant } from '../../../src/domain/tuning/units';

const trace = { pans: 3, readings: 87, at: instant(1_760_000_000_000) };

describe('the trace of the rack', () => {
  it('tells a rack with less in it from one that has as much or more', () => {
    expect(isLost(trace, { pans: 0, readings: 0 })).toBe(true);
    expect(isLost(trace, { pans: 3, readings: 86 })).toBe(true);
    expect(isLost(trace, { pans: 3, readings: 87 })).toBe(false);
    expect(isLost(trace, { pans: 4, readings: 90 })).toBe(false);
  });

  it('misses nothing where nothing was ever kept', () => {
    expect(isLost(null, { pans: 0, readings: 0 })).toBe(false);
  });

  it('is read as it was written, and taken for none where it was not', () => {
    expect(restoreTrace(traceText(trace))).toEqual(trace);
    const older = { ...trace, since: instant(1_750_000_000_000) };
    expect(restoreTrace(traceText(older))).toEqual(older);
    for (const text of [null, '', 'no', '3', '{}', '{"pans":-1,"readings":2,"at":3}', '[1,2]']) {
      expect(restoreTrace(text)).toBeNull();
    }
  });
});
