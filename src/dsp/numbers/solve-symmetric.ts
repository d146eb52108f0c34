// Small symmetric positive definite systems, by Cholesky factors.

/**
 * Replaces `matrix` (row-major, size × size, lower triangle read) by its Cholesky factor.
 * Returns false if it is not positive definite.
 */
export function factorise(matrix: Float64Array, size: number): boolean {
  for (let column = 0; column < size; column++) {
    for (let row = column; row < size; row++) {
      let sum = matrix[row * size + column];
      for (let k = 0; k < column; k++) {
        sum -= matrix[row * size + k] * matrix[column * size + k];
      }
      if (row === column) {
        if (!(sum > 0)) return false;
        matrix[row * size + column] = Math.sqrt(sum);
      } else {
        matrix[row * size + column] = sum / matrix[column * size + column];
      }
    }
  }
  return true;
}

/** Solves L·Lᵀ·x = `right` in place, with the factor from `factorise`. */
export function solveFactorised(factor: Float64Array, size: number, right: Float64Array): void {
  for (let row = 0; row < size; row++) {
    let sum = right[row];
    for (let k = 0; k < row; k++) sum -= factor[row * size + k] * right[k];
    right[row] = sum / factor[row * size + row];
  }
  for (let row = size - 1; row >= 0; row--) {
    let sum = right[row];
    for (let k = row + 1; k < size; k++) sum -= factor[k * size + row] * right[k];
    right[row] = sum / factor[row * size + row];
  }
}
