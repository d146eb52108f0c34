import { describe, expect, it } from 'vitest';
import { nthSmallest, upperMedian } from '../../../src/dsp/numbers/nth-smallest';
import { array, assert, double, nat, property } from '../../properties';

const values = array(double({ noNaN: true }), { maxLength: 41 });
const inOrder = (of: readonly number[]): readonly number[] => [...of].sort((a, b) => a - b);

describe('the upper median', () => {
  it('is the middle value of an odd number, and the upper one of two', () => {
    // By hand. The textbook's median of an even number is the mean of two; the ear takes the upper one of them.
    expect(upperMedian([7, 1, 5])).toBe(5);
    expect(upperMedian([9, 3, 1, 7])).toBe(7);
    expect(upperMedian(Float64Array.of(2, 2, 8, 2, 9))).toBe(2);
  });

  it('of one value is that value, of two the larger, of none nought', () => {
    expect(upperMedian([])).toBe(0);
    expect(upperMedian([-4])).toBe(-4);
    expect(upperMedian([3, -4])).toBe(3);
    expect(upperMedian([-4, 3])).toBe(3);
    expect(upperMedian([6, 5], 0)).toBe(0);
  });

  it('looks at the first values only where it is told how many', () => {
    const given = [5, 1, 3, -100, -100, -100];
    expect(upperMedian(given, 3)).toBe(3);
    expect(given.slice(3)).toEqual([-100, -100, -100]);
  });

  it('is what sorting gives, for any number of values, and loses none of them', () => {
    assert(
      property(values, (given) => {
        const kept = [...given];
        expect(upperMedian(kept)).toBe(inOrder(given)[Math.floor(given.length / 2)] ?? 0);
        expect(inOrder(kept)).toEqual(inOrder(given));
      }),
    );
  });
});

describe('the nth smallest', () => {
  it('is what sorting gives at every place', () => {
    assert(
      property(values, nat(), (given, number) => {
        if (given.length === 0) return;
        const place = number % given.length;
        expect(nthSmallest([...given], given.length, place)).toBe(inOrder(given)[place]);
      }),
    );
  });
});
