import { describe, expect, it } from 'vitest';
import {
  choleskyOf,
  inverseEntry,
  inverseTriangle,
  solveCholesky,
} from '../../../src/domain/numbers/cholesky';

// The worked example of "Cholesky decomposition" in common textbooks (from memory), checked by multiplying out.
const matrix = Float64Array.from([4, 12, -16, 12, 37, -43, -16, -43, 98]);

describe('a positive definite matrix', () => {
  it('is a triangle times its transpose', () => {
    expect([...choleskyOf(matrix, 3)]).toEqual([2, 0, 0, 6, 1, 0, -8, 5, 3]);
  });

  it('is solved and inverted', () => {
    const lower = choleskyOf(matrix, 3);
    // 4·1 + 12·2 − 16·3 and so on.
    const solved = solveCholesky(lower, 3, Float64Array.from([-20, -43, 192]));
    [1, 2, 3].forEach((value, k) => {
      expect(solved[k]).toBeCloseTo(value, 9);
    });
    const triangle = inverseTriangle(lower, 3);
    for (let row = 0; row < 3; row++) {
      for (let column = 0; column < 3; column++) {
        let sum = 0;
        for (let k = 0; k < 3; k++) {
          sum += (matrix[row * 3 + k] ?? 0) * inverseEntry(triangle, 3, k, column);
        }
        expect(sum).toBeCloseTo(row === column ? 1 : 0, 9);
      }
    }
  });

  it('is told from one that is not', () => {
    expect(() => choleskyOf(Float64Array.from([1, 2, 2, 1]), 2)).toThrow(RangeError);
  });
});
