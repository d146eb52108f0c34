// Solving with symmetric positive definite matrices, kept row by row in one array.

/**
 * The lower triangle L with L·Lᵀ = `matrix` (size × size), above it zeros. Throws a RangeError if `matrix` is not
 * positive definite. Cholesky–Banachiewicz; Golub & Van Loan, Matrix Computations, 4th ed., sec. 4.2.
 */
export function choleskyOf(matrix: Float64Array, size: number): Float64Array {
  const lower = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row * size + column] ?? 0;
      for (let k = 0; k < column; k++) {
        sum -= (lower[row * size + k] ?? 0) * (lower[column * size + k] ?? 0);
      }
      if (row !== column) {
        lower[row * size + column] = sum / (lower[column * size + column] ?? 1);
      } else {
        if (!(sum > 0)) throw new RangeError('not positive definite');
        lower[row * size + row] = Math.sqrt(sum);
      }
    }
  }
  return lower;
}

/** x with L·Lᵀ·x = `right`, from the triangle of `choleskyOf`. */
export function solveCholesky(lower: Float64Array, size: number, right: Float64Array) {
  const solution = Float64Array.from(right);
  for (let row = 0; row < size; row++) {
    let sum = solution[row] ?? 0;
    for (let k = 0; k < row; k++) sum -= (lower[row * size + k] ?? 0) * (solution[k] ?? 0);
    solution[row] = sum / (lower[row * size + row] ?? 1);
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = solution[row] ?? 0;
    for (let k = row + 1; k < size; k++) sum -= (lower[k * size + row] ?? 0) * (solution[k] ?? 0);
    solution[row] = sum / (lower[row * size + row] ?? 1);
  }
  return solution;
}

/** The inverse of the triangle L itself, a triangle too: the inverse of L·Lᵀ is its transpose times it. */
export function inverseTriangle(lower: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    const diagonal = lower[row * size + row] ?? 1;
    inverse[row * size + row] = 1 / diagonal;
    for (let column = 0; column < row; column++) {
      let sum = 0;
      for (let k = column; k < row; k++) {
        sum -= (lower[row * size + k] ?? 0) * (inverse[k * size + column] ?? 0);
      }
      inverse[row * size + column] = sum / diagonal;
    }
  }
  return inverse;
}

/** Entry (`row`, `column`) of the inverse of L·Lᵀ, from `inverseTriangle`. */
export function inverseEntry(
  triangle: Float64Array,
  size: number,
  row: number,
  column: number,
): number {
  let sum = 0;
  for (let k = Math.max(row, column); k < size; k++) {
    sum += (triangle[k * size + row] ?? 0) * (triangle[k * size + column] ?? 0);
  }
  return sum;
}
