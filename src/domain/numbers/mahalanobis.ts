// How far three differences lie from zero, measured by their own covariance.
import { choleskyOf, solveCholesky } from './cholesky';
import { type Matrix3, partialIndices, type ThreePartials } from './three-partials';

/**
 * Squared Mahalanobis distance over the values that are there (null stands for a missing one), and how many there are.
 */
export function mahalanobis(
  away: ThreePartials<number | null>,
  covariance: Matrix3,
): { readonly distance: number; readonly values: number } {
  const there = partialIndices.flatMap((i) => {
    const value = away[i];
    return value === null ? [] : [{ i, value }];
  });
  const values = there.length;
  if (values === 0) return { distance: 0, values };
  const matrix = Float64Array.from(there.flatMap((a) => there.map((b) => covariance[a.i][b.i])));
  const right = Float64Array.from(there, ({ value }) => value);
  const solved = solveCholesky(choleskyOf(matrix, values), values, right);
  return {
    distance: there.reduce((sum, { value }, k) => sum + value * solved[k], 0),
    values,
  };
}
