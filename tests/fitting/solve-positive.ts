// Solves A x = b for a symmetric positive definite A, by Cholesky's factors (Golub & Van Loan, Matrix Computations).

/** `a` row by row; neither is changed. */
export function solvePositive(a: Float64Array, b: Float64Array): Float64Array {
  const size = b.length;
  const low = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * size + j] ?? 0;
      for (let k = 0; k < j; k++) sum -= (low[i * size + k] ?? 0) * (low[j * size + k] ?? 0);
      low[i * size + j] =
        i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (low[j * size + j] ?? 1);
    }
  }
  const x = new Float64Array(b);
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i] = (x[i] ?? 0) - (low[i * size + k] ?? 0) * (x[k] ?? 0);
    x[i] = (x[i] ?? 0) / (low[i * size + i] ?? 1);
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i] = (x[i] ?? 0) - (low[k * size + i] ?? 0) * (x[k] ?? 0);
    x[i] = (x[i] ?? 0) / (low[i * size + i] ?? 1);
  }
  return x;
}
