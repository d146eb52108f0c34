// One step of Levenberg and Marquardt's method, for the two fits of the ear that descend by it.
import { factorise } from '../../domain/numbers/cholesky';

/**
 * Fills `factor` with the Cholesky triangle of N + damping·diag(N), N being the `normal` equations JᵀWJ of a least-
 * squares fit (size × size, lower triangle); then `solveFactorised` turns the gradient JᵀWr into a step. Little damping
 * gives the step of Gauss and Newton, much of it a short step down the gradient, each parameter in its own scale
 * (Marquardt, J. SIAM 11(2), 431, 1963; Press et al., Numerical Recipes, "Levenberg–Marquardt Method"). With next to no
 * damping the triangle gives the parameters' covariance, as a multiple of the noise. False if the equations cannot be
 * solved.
 *
 * Only the step is shared. How damping grows and falls and when a descent ends differ: `fit-damped-lines` counts all its
 * attempts and asks for a part of the energy that is left; `phase-fit` weighs its samples anew before each step, so that
 * costs of two steps are not comparable, and asks for a gain in likelihood.
 */
export function factoriseDamped(
  normal: Float64Array,
  size: number,
  damping: number,
  factor: Float64Array,
): boolean {
  for (let at = 0; at < size * size; at++) factor[at] = normal[at];
  for (let at = 0; at < size * size; at += size + 1) {
    factor[at] = normal[at] * (1 + damping) + 1e-300;
  }
  return factorise(factor, size);
}

/** So little damping that it only makes up for rounding: for covariances. */
export const undamped = 1e-12;
