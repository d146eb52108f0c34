// Solves equations with symmetric positive definite matrices, each kept row by row in one array. The ear solves in
// place, in arrays that it borrows; the advice needs its matrices unchanged. Both use this file.

/**
 * Replaces `matrix` (size × size, its lower triangle is read) by the lower triangle L with L·Lᵀ = `matrix`; what stands
 * above the diagonal stays. Returns false, with the triangle half done, if `matrix` is not positive definite.
 * Cholesky–Banachiewicz; Golub & Van Loan, Matrix Computations, 4th ed., sec. 4.2.
 */
export function factorise(matrix: Float64Array, size: number): boolean {
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row * size + column];
      for (let k = 0; k < column; k++) sum -= matrix[row * size + k] * matrix[column * size + k];
      if (row !== column) {
        matrix[row * size + column] = sum / matrix[column * size + column];
      } else {
        if (!(sum > 0)) return false;
        matrix[row * size + row] = Math.sqrt(sum);
      }
    }
  }
  return true;
}

/** Replaces `right` by the x with L·Lᵀ·x = `right`, from the triangle of `factorise`. */
export function solveFactorised(lower: Float64Array, size: number, right: Float64Array): void {
  for (let row = 0; row < size; row++) {
    let sum = right[row];
    for (let k = 0; k < row; k++) sum -= lower[row * size + k] * right[k];
    right[row] = sum / lower[row * size + row];
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = right[row];
    for (let k = row + 1; k < size; k++) sum -= lower[k * size + row] * right[k];
    right[row] = sum / lower[row * size + row];
  }
}

/** The triangle of `factorise` in an array of its own, zeros above it. Throws a RangeError if there is none. */
export function choleskyOf(matrix: Float64Array, size: number): Float64Array {
  const lower = matrix.slice(0, size * size);
  if (!factorise(lower, size)) throw new RangeError('not positive definite');
  for (let row = 0; row < size; row++) lower.fill(0, row * size + row + 1, (row + 1) * size);
  return lower;
}

/** The x with L·Lᵀ·x = `right`, from either triangle, in an array of its own. */
export function solveCholesky(lower: Float64Array, size: number, right: Float64Array) {
  const solution = Float64Array.from(right);
  solveFactorised(lower, size, solution);
  return solution;
}

/** The inverse of the triangle L itself, a triangle too: the inverse of L·Lᵀ is its transpose times it. */
export function inverseTriangle(lower: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    const diagonal = lower[row * size + row];
    inverse[row * size + row] = 1 / diagonal;
    for (let column = 0; column < row; column++) {
      let sum = 0;
      for (let k = column; k < row; k++) {
        sum -= lower[row * size + k] * inverse[k * size + column];
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
    sum += triangle[k * size + row] * triangle[k * size + column];
  }
  return sum;
}
