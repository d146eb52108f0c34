import { describe, expect, it } from 'vitest';
import { medianSlope } from '../../../src/domain/numbers/median-slope';

const points = (x: readonly number[], y: readonly number[]) =>
  x.map((each, k) => ({ x: each, y: y[k] ?? 0 }));

describe('the median of slopes', () => {
  it('is that of the worked example of Sen, with the limits that his ranks give', () => {
    // P. K. Sen, J. Am. Stat. Assoc. 63, 1379, 1968: seven points, slope 4; limits 26/7 and 35/8 at 93 %, as
    // corrected in the tests of the R package deming (T. Therneau).
    const found = medianSlope(
      points([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]),
      1.8119, // the normal quantile of 96.5 %
    );
    expect(found?.slope).toBeCloseTo(4, 9);
    expect(found?.low).toBeCloseTo(26 / 7, 9);
    expect(found?.high).toBeCloseTo(35 / 8, 9);
  });

  it('of three points spans all three slopes, and one wild point of many does not tilt it', () => {
    expect(medianSlope(points([0, 1, 2], [0, 1, 1]))).toEqual({ slope: 0.5, low: 0, high: 1 });
    const x = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    const y = x.map((each) => (each === 8 ? 500 : -each));
    expect(medianSlope(points(x, y))?.slope).toBeCloseTo(-1, 9);
  });

  it('is not known where all points lie above each other', () => {
    expect(medianSlope(points([5, 5, 5], [1, 2, 3]))).toBeNull();
    expect(medianSlope([])).toBeNull();
  });
});
