import { describe, expect, it } from 'vitest';
import { StraightLineFit } from '../../../src/dsp/numbers/straight-line';
import { array, assert, double, property, tuple } from '../../properties';

const fitted = (points: readonly (readonly [x: number, y: number, weight?: number])[]) => {
  const fit = new StraightLineFit();
  for (const [x, y, weight] of points) fit.add(x, y, weight);
  return fit;
};

/** The first of Anscombe's four sets (F. J. Anscombe, Am. Stat. 27, 17, 1973, table). */
const anscombe = [
  [10, 8.04],
  [8, 6.95],
  [13, 7.58],
  [9, 8.81],
  [11, 8.33],
  [14, 9.96],
  [6, 7.24],
  [4, 4.26],
  [12, 10.84],
  [7, 4.82],
  [5, 5.68],
] as const;

describe('a straight line through points', () => {
  it("is the published one for Anscombe's first set, with the standard error that follows from it", () => {
    const fit = fitted(anscombe);
    // Anscombe: y = 3 + 0.5x, Σ(x − x̄)² = 110, residual sum of squares 13.75 (each as it was rounded there).
    const { level, slope } = fit.line();
    expect(level).toBeCloseTo(3, 2);
    expect(slope).toBeCloseTo(0.5, 2);
    const { value, error } = fit.atZero();
    expect(value).toBe(level);
    // σ of the level: √(13.75 / 9 · (1/11 + 9²/110)) = 1.1247 (textbook).
    expect(error).toBeCloseTo(1.1247, 2);
    expect(fit.mean()).toBeCloseTo(7.5, 2);
    expect(fit.weight).toBe(11);
  });

  it('counts a point of weight three as three points', () => {
    const weighed = fitted([
      [0, 1],
      [1, 4, 3],
      [3, 2],
    ]).line();
    // By hand: w = 5, Σx = 6, Σx² = 12, Σy = 15, Σxy = 18; slope = (5·18 − 6·15)/(5·12 − 36) = 0.
    expect(weighed).toEqual({ level: 3, slope: 0 });
    const repeated = fitted([
      [0, 1],
      [1, 4],
      [1, 4],
      [1, 4],
      [3, 2],
    ]).line();
    expect(repeated).toEqual(weighed);
  });

  it('is level where no slope can be known, and nought without points', () => {
    expect(fitted([]).line()).toEqual({ level: 0, slope: 0 });
    expect(fitted([]).mean()).toBe(0);
    expect(fitted([[2, 7]]).line()).toEqual({ level: 7, slope: 0 });
    const atOnePlace = fitted([
      [2, 6],
      [2, 8],
      [2, 10],
      [2, 12],
    ]);
    expect(atOnePlace.line()).toEqual({ level: 9, slope: 0 });
    expect(atOnePlace.atZero()).toEqual({ value: 9, error: Number.POSITIVE_INFINITY });
  });

  it('states no error for fewer than four points', () => {
    const three = anscombe.slice(0, 3);
    expect(fitted(three).atZero().error).toBe(Number.POSITIVE_INFINITY);
    expect(fitted(anscombe.slice(0, 4)).atZero().error).toBeLessThan(10);
  });

  it('goes through any points that lie on one line', () => {
    const value = double({ min: -100, max: 100, noNaN: true });
    assert(
      property(
        tuple(value, value),
        array(double({ min: -10, max: 10, noNaN: true }), { minLength: 2, maxLength: 9 }),
        ([level, slope], places) => {
          const apart = Math.max(...places) - Math.min(...places);
          if (apart < 0.1) return;
          const line = fitted(places.map((x) => [x, level + slope * x])).line();
          expect(line.level).toBeCloseTo(level, 6);
          expect(line.slope).toBeCloseTo(slope, 6);
        },
      ),
    );
  });
});
