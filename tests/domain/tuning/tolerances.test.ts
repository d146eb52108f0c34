import { describe, expect, it } from 'vitest';
import { isToleranceSet } from '../../../src/domain/tuning/is-tolerance-set';
import {
  fineTolerances,
  goodTolerances,
  tolerancesAt,
  usualTolerances,
} from '../../../src/domain/tuning/tolerances';
import * as fc from '../../properties';

describe('the tolerances', () => {
  it('by default are 5, 12 and 30 cents, for the third partial 10, 25 and 50, and C6 the highest with partials', () => {
    // The app's own defaults (common practice, no source): no published standard exists.
    expect(usualTolerances).toEqual({
      good: { main: 5, third: 10 },
      playable: { main: 12, third: 25 },
      out: { main: 30, third: 50 },
      highestWithPartials: 84,
    });
    expect(goodTolerances).toEqual({ main: 5, third: 10, highestWithPartials: 84 });
    expect(tolerancesAt(fineTolerances, 'good').main).toBe(2);
  });

  it('are valid when they widen from good to out', () => {
    expect(isToleranceSet(usualTolerances)).toBe(true);
    expect(isToleranceSet(fineTolerances)).toBe(true);
    const { good, playable, out } = usualTolerances;
    expect(isToleranceSet({ ...usualTolerances, good: playable, playable: good })).toBe(false);
    expect(isToleranceSet({ ...usualTolerances, good: { ...good, third: 26 } })).toBe(false);
    expect(isToleranceSet({ ...usualTolerances, good: { ...good, main: 0 } })).toBe(false);
    expect(isToleranceSet({ ...usualTolerances, out: { ...out, main: 101 } })).toBe(false);
    expect(isToleranceSet({ ...usualTolerances, out: { ...out, main: Number.NaN } })).toBe(false);
    expect(isToleranceSet({ ...usualTolerances, highestWithPartials: 60.5 })).toBe(false);
  });

  it('are not taken from just anything', () => {
    fc.assert(fc.property(fc.anything(), (value) => !isToleranceSet(value)));
  });
});
