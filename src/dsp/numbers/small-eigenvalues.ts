// Eigenvalues of a complex matrix of a few rows.

/** A complex number. */
export type Complex = readonly [re: number, im: number];

const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];
const minus = ([a, b]: Complex, [c, d]: Complex): Complex => [a - c, b - d];
const over = (one: Complex, [c, d]: Complex): Complex => {
  const size = c * c + d * d + 1e-300;
  return times(one, [c / size, -d / size]);
};
const zero: Complex = [0, 0];

/** Most rounds, and the change below which a root has settled (chosen, no source). */
const mostRounds = 60;
const near = 1e-13;

/**
 * Eigenvalues of `matrix` (rows), in no order: the coefficients of its characteristic polynomial by Faddeev and
 * LeVerrier, its roots by Weierstrass. Good for up to about six rows.
 */
export function smallEigenvalues(matrix: readonly (readonly Complex[])[]): readonly Complex[] {
  const size = matrix.length;
  /** From the constant up to the highest power, whose coefficient is 1. */
  const coefficients: Complex[] = Array.from({ length: size }, () => zero);
  coefficients.push([1, 0]);
  let power: Complex[][] = matrix.map((row) => row.map(() => zero));
  for (let k = 1; k <= size; k++) {
    const before = coefficients[size - k + 1];
    const shifted = power.map((row, i) =>
      row.map((value, j) => (i === j ? plus(value, before) : value)),
    );
    power = matrix.map((row) =>
      row.map((_, j) =>
        row.reduce((sum, value, n) => plus(sum, times(value, shifted[n][j])), zero),
      ),
    );
    const trace = power.reduce((sum, row, i) => plus(sum, row[i]), zero);
    coefficients[size - k] = [-trace[0] / k, -trace[1] / k];
  }
  return rootsOf(coefficients);
}

function rootsOf(coefficients: readonly Complex[]): readonly Complex[] {
  const degree = coefficients.length - 1;
  const valueAt = (x: Complex): Complex =>
    coefficients.reduceRight((sum, coefficient) => plus(times(sum, x), coefficient), zero);
  // Points on no axis of symmetry, as is usual for this method.
  const roots: Complex[] = [];
  for (let k = 0, point: Complex = [1, 0]; k < degree; k++) {
    roots.push(point);
    point = times(point, [0.4, 0.9]);
  }
  for (let round = 0; round < mostRounds; round++) {
    let moved = 0;
    roots.forEach((root, k) => {
      const others = roots.reduce(
        (product, other, j) => (j === k ? product : times(product, minus(root, other))),
        [1, 0] as Complex,
      );
      const step = over(valueAt(root), others);
      roots[k] = minus(root, step);
      moved = Math.max(moved, Math.hypot(...step));
    });
    if (moved < near) break;
  }
  return roots;
}
