import { describe, expect, it } from 'vitest';
import { solveFactorised } from '../../../src/domain/numbers/cholesky';
import { factoriseDamped, undamped } from '../../../src/dsp/numbers/damped-equations';
import { array, assert, constantFrom, double, integer, property } from '../../properties';
import { checked } from '../checked-arrays';

const matrix = (...rows: readonly number[]) => checked(Float64Array.from(rows));

describe('the triangle of damped equations', () => {
  it('is the known one without damping', () => {
    // A worked example that stands in many places, easily checked by hand: L = (2; 6 1; −8 5 3), N = L·Lᵀ.
    const normal = matrix(4, 12, -16, 12, 37, -43, -16, -43, 98);
    const factor = matrix(0, 0, 0, 0, 0, 0, 0, 0, 0);
    expect(factoriseDamped(normal, 3, undamped, factor)).toBe(true);
    const lower = [factor[0], factor[3], factor[4], factor[6], factor[7], factor[8]];
    for (const [k, value] of [2, 6, 1, -8, 5, 3].entries()) expect(lower[k]).toBeCloseTo(value, 8);
  });

  it('adds the same part to each place of the diagonal, and to nothing else', () => {
    // By hand: N = (4 2; 2 10) with damping 0.25 is (5 2; 2 12.5); L = (√5; 2/√5 √11.7).
    const factor = matrix(0, 0, 0, 0);
    expect(factoriseDamped(matrix(4, 2, 2, 10), 2, 0.25, factor)).toBe(true);
    expect(factor[0]).toBeCloseTo(Math.sqrt(5), 12);
    expect(factor[2]).toBeCloseTo(2 / Math.sqrt(5), 12);
    expect(factor[3]).toBeCloseTo(Math.sqrt(11.7), 12);
  });

  it('leads to the step of Gauss and Newton with hardly any damping, and down the gradient with much', () => {
    // By hand: N·x = g with N = (4 2; 2 10), g = (8, 22) has x = (1, 2).
    const step = (damping: number) => {
      const factor = matrix(0, 0, 0, 0);
      factoriseDamped(matrix(4, 2, 2, 10), 2, damping, factor);
      const right = matrix(8, 22);
      solveFactorised(factor, 2, right);
      return [...right];
    };
    const [first, second] = step(undamped);
    expect(first).toBeCloseTo(1, 9);
    expect(second).toBeCloseTo(2, 9);
    const [down, along] = step(1e6);
    // Each parameter in its own scale: g / (damping · diagonal).
    expect((down ?? 0) * 1e6).toBeCloseTo(8 / 4, 4);
    expect((along ?? 0) * 1e6).toBeCloseTo(22 / 10, 4);
  });

  it('says no where the equations cannot be solved', () => {
    expect(factoriseDamped(matrix(1, 2, 2, 1), 2, undamped, matrix(0, 0, 0, 0))).toBe(false);
    expect(factoriseDamped(matrix(Number.NaN), 1, undamped, matrix(0))).toBe(false);
  });

  it('of one equation is a root, of none nothing', () => {
    const one = matrix(0);
    expect(factoriseDamped(matrix(9), 1, 3, one)).toBe(true);
    expect(one[0]).toBeCloseTo(6, 12);
    expect(factoriseDamped(matrix(), 0, 1, matrix())).toBe(true);
  });

  it('times its transpose is the damped matrix, whatever the size, and touches neither matrix nor neighbours', () => {
    const slope = double({ min: -5, max: 5, noNaN: true });
    assert(
      property(
        integer({ min: 0, max: 5 }),
        array(slope, { minLength: 40, maxLength: 40 }),
        constantFrom(0.001, 0.1, 10),
        (size, slopes, damping) => {
          // N = JᵀJ of eight rows, as a fit makes it.
          const at = (row: number, column: number) => slopes[(row * 5 + column) % 40] ?? 0;
          const normal = new Float64Array(size * size);
          for (let i = 0; i < size; i++) {
            for (let j = 0; j < size; j++) {
              let sum = 0;
              for (let row = 0; row < 8; row++) sum += at(row, i) * at(row, j);
              normal[i * size + j] = sum;
            }
          }
          const given = [...normal];
          const longer = new Float64Array(size * size + 1).fill(7);
          const solved = factoriseDamped(checked(normal), size, damping, checked(longer));
          expect([...normal]).toEqual(given);
          expect(longer.at(-1)).toBe(7);
          if (!solved) return;
          for (let i = 0; i < size; i++) {
            for (let j = 0; j <= i; j++) {
              let product = 0;
              for (let k = 0; k <= j; k++) {
                product += (longer[i * size + k] ?? 0) * (longer[j * size + k] ?? 0);
              }
              const truth = (normal[i * size + j] ?? 0) * (i === j ? 1 + damping : 1);
              expect(product).toBeCloseTo(truth, 6);
            }
          }
        },
      ),
    );
  });
});
