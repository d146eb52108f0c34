// How much the same blows differ in effect from one set to the next, and when that is too much to be chance.

import { type Matrix3, matrix3, type ThreePartials } from '../numbers/three-partials';
import { type SetForce, worthOf } from '../records/blow-places';

/** No source: set on how much sets differ on simulated pans, and tested on other simulated pans. */
const scatter = {
  /** Of a set as a whole, a part of its effect: chance from blow to blow, and how hard the whole set was. */
  blows: 0.36,
  set: 0.1,
  /** Of each partial by itself, cents: per usual set, and with any set. */
  each: 0.6,
  base: 0.2,
};

/**
 * Covariance of what one set does beside the expected. `squares`: expected products of the effects of a usual set
 * (`expectedSquares`), so that a place we know little about is not mistaken for one that scatters little.
 */
export const blowScatter = (squares: Matrix3, { strength, firmness }: SetForce): Matrix3 => {
  // Chance from blow to blow averages out over a set: its variance goes with strength · (worth of one blow).
  const chance = strength * worthOf(firmness);
  const part = chance * scatter.blows ** 2 + (strength * scatter.set) ** 2;
  return matrix3((i, j) => {
    const common = part * squares[i][j];
    return i === j ? common + chance * scatter.each ** 2 + scatter.base ** 2 : common;
  });
};

/** E(e·eᵀ) of an effect e with this mean and covariance. */
export const expectedSquares = (mean: ThreePartials, covariance: Matrix3): Matrix3 =>
  matrix3((i, j) => mean[i] * mean[j] + covariance[i][j]);

/** Age at which a set counts half: metal, hammers and arms change (own choice). */
const halfWeightAfter = 365 * 24 * 3600 * 1000;

/** By how much the variance of a set grows with its age in milliseconds. */
export const ageFactor = (age: number): number => 1 + Math.max(0, age) / halfWeightAfter;

/** Quantiles of chi squared for 1, 2 and 3 values (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4). */
const quantiles = { '0.90': [2.706, 4.605, 6.251], '0.99': [6.635, 9.21, 11.345] } as const;
const quantile = (level: keyof typeof quantiles, values: number): number =>
  quantiles[level][Math.min(3, Math.max(1, values)) - 1] ?? 0;

/**
 * Weight of a set that lies `distance` (squared Mahalanobis) from what the others say: beyond a point it pulls no
 * harder.
 */
export const robustWeight = (distance: number, values: number): number => {
  const reach = quantile('0.90', values);
  return distance <= reach ? 1 : reach / distance;
};

/** One set in a hundred would lie this far off by chance. */
export const isTooFar = (distance: number, values: number): boolean =>
  distance > quantile('0.99', values);
