import { describe, expect, it } from 'vitest';
import {
  lowerMedian,
  meanOf,
  median,
  sumOf,
  weightedMedian,
} from '../../../src/domain/numbers/averages';
import * as fc from '../../properties';

const someNumbers = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1 });

describe('middles and means', () => {
  it('are null of nothing', () => {
    expect(meanOf([])).toBeNull();
    expect(median([])).toBeNull();
    expect(lowerMedian([])).toBeNull();
    expect(weightedMedian([])).toBeNull();
    expect(sumOf([], () => 1)).toBe(0);
  });

  it('of an odd count are the one in the middle, in whatever order', () => {
    expect(median([9, 1, 5])).toBe(5);
    expect(lowerMedian([9, 1, 5])).toBe(5);
  });

  it('of an even count are the mean of two, or the lower one', () => {
    expect(median([8, 1, 5, 100])).toBe(6.5);
    expect(lowerMedian([8, 1, 5, 100])).toBe(5);
  });

  it('leave the numbers where they were', () => {
    const values = [3, 1, 2];
    median(values);
    lowerMedian(values);
    expect(values).toEqual([3, 1, 2]);
  });

  it('have as many numbers below as above, and the lower one is one of them', () => {
    fc.assert(
      fc.property(someNumbers, (values) => {
        const middle = median(values) ?? Number.NaN;
        const below = values.filter((value) => value < middle).length;
        const above = values.filter((value) => value > middle).length;
        expect(Math.max(below, above)).toBeLessThanOrEqual(values.length / 2);
        const lower = lowerMedian(values);
        expect(values).toContain(lower);
        expect(lower).toBeLessThanOrEqual(middle);
      }),
    );
  });

  it('weigh: with equal weights like the median, and a heavy one decides', () => {
    fc.assert(
      fc.property(someNumbers, (values) => {
        const equal = values.map((value) => ({ value, weight: 0.1 }));
        expect(weightedMedian(equal)).toBeCloseTo(median(values) ?? Number.NaN, 9);
      }),
    );
    const light = [1, 2, 3].map((value) => ({ value, weight: 1 }));
    expect(weightedMedian([...light, { value: 50, weight: 4 }])).toBe(50);
    // Half of the weight lies on either side.
    expect(weightedMedian([...light, { value: 50, weight: 3 }])).toBe(26.5);
  });

  it('add up', () => {
    expect(sumOf(['a', 'bb'], (text) => text.length)).toBe(3);
    expect(meanOf([1, 2, 6])).toBe(3);
  });
});
