// The regression behind the response model, written with covariances (a Gaussian process), so that any number of levels
// fits at once.

import { choleskyOf, inverseEntry, inverseTriangle, solveCholesky } from '../numbers/cholesky';
import {
  type Matrix3,
  mapThree,
  matrix3,
  type PartialIndex,
  partialIndices,
  type ThreePartials,
} from '../numbers/three-partials';
import type { SetForce } from '../records/blow-places';
import { priorOf } from './blow-priors';
import type { BlowSet } from './blow-sets';
import { type BlowSpot, responseCovariance } from './response-kernel';
import { ageFactor, blowScatter, expectedSquares, isTooFar, robustWeight } from './response-noise';

export interface PlacedSet extends BlowSet {
  readonly spot: BlowSpot;
  /** Milliseconds before now. */
  readonly age: number;
}

export interface Effect {
  /** Cents per usual set of light blows. */
  readonly mean: ThreePartials;
  readonly covariance: Matrix3;
}

export interface ResponseFit {
  effectAt(spot: BlowSpot): Effect;
  /** Ids of sets that contradict what all the others say. */
  readonly contradicting: ReadonlySet<string>;
}

/** One measured value: partial `partial` of set number `set`. */
interface Row {
  readonly set: number;
  readonly partial: PartialIndex;
  readonly spot: BlowSpot;
  readonly strength: number;
  /** What was measured, less what the prior expected, cents. */
  readonly surprise: number;
}

/** Weights and scatter depend on the fit, and the fit on them: this many rounds settle both (chosen, no source). */
const passes = 4;

/**
 * Posterior of a linear model with normal priors and errors (Rasmussen & Williams, Gaussian Processes for Machine
 * Learning, 2006, eqs. 2.25 and 2.26), with sets reweighted by how far they lie from the others' prediction. The
 * order of the sets makes no difference but for rounding.
 */
export function fitResponse(sets: readonly PlacedSet[]): ResponseFit {
  const rows = sets.flatMap(rowsOf);
  const size = rows.length;
  const shared = new Float64Array(size * size);
  rows.forEach((one, r) => {
    rows.forEach((other, c) => {
      const covariance = responseCovariance(one.spot, one.partial, other.spot, other.partial);
      shared[r * size + c] = one.strength * other.strength * covariance;
    });
  });
  const surprises = Float64Array.from(rows, ({ surprise }) => surprise);
  let weights = sets.map(() => 1);
  let squares = sets.map(({ spot }) => expectedSquares(priorOf(spot).mean, priorCovariance(spot)));
  let lower: Float64Array = new Float64Array(0);
  let contradicting: ReadonlySet<string> = new Set();
  for (let pass = 0; pass < passes && size > 0; pass++) {
    const noises = sets.map((set, k) => noiseOf(set, squares[k] ?? noSquares));
    const matrix = Float64Array.from(shared);
    forBlocks(rows, (r, c, { set }, i, j) => {
      const at = r * size + c;
      matrix[at] = (matrix[at] ?? 0) + (noises[set]?.[i][j] ?? 0) / (weights[set] ?? 1);
    });
    lower = choleskyOf(matrix, size);
    const others = leaveOneOut(sets, rows, { lower, surprises, noises, weights });
    weights = others.map(({ distance, values }) => robustWeight(distance, values));
    squares = others.map(({ squares: expected }) => expected);
    const tooFar = sets.filter((_, k) => {
      const other = others[k];
      return other !== undefined && isTooFar(other.distance, other.values);
    });
    contradicting = new Set(tooFar.map(({ id }) => id));
  }
  const answer = solveCholesky(lower, size, surprises);
  return {
    contradicting,
    effectAt(spot) {
      const crosses = mapThree(partialIndices, (i) =>
        Float64Array.from(
          rows,
          (row) => row.strength * responseCovariance(spot, i, row.spot, row.partial),
        ),
      );
      const solved = mapThree(crosses, (cross) => solveCholesky(lower, size, cross));
      const prior = priorOf(spot).mean;
      return {
        mean: mapThree(crosses, (cross, i) => prior[i] + dot(cross, answer)),
        covariance: matrix3(
          (i, j) => responseCovariance(spot, i, spot, j) - dot(crosses[i], solved[j]),
        ),
      };
    },
  };
}

function rowsOf({ change, spot, strength }: PlacedSet, set: number): Row[] {
  const expected = priorOf(spot).mean;
  return partialIndices.flatMap((partial) => {
    const moved = change[partial];
    if (moved === null) return [];
    const surprise = moved - strength * expected[partial];
    return [{ set, partial, spot, strength, surprise }];
  });
}

/** Covariance of one set's measured changes about its expected effect. `squares`: see `blowScatter`. */
export const noiseOf = (
  { sigma, age, ...force }: Pick<PlacedSet, 'sigma' | 'age' | keyof SetForce>,
  squares: Matrix3,
): Matrix3 => {
  const blows = blowScatter(squares, force);
  return matrix3((i, j) => ageFactor(age) * (blows[i][j] + (i === j ? sigma[i] ** 2 : 0)));
};

/** Calls `act` for every pair of rows of the same set. */
function forBlocks(
  rows: readonly Row[],
  act: (r: number, c: number, row: Row, i: PartialIndex, j: PartialIndex) => void,
): void {
  rows.forEach((row, r) => {
    for (let c = Math.max(0, r - 2); c < Math.min(rows.length, r + 3); c++) {
      const other = rows[c];
      if (other && other.set === row.set) act(r, c, row, row.partial, other.partial);
    }
  });
}

const noSquares: Matrix3 = matrix3(() => 0);

const priorCovariance = (spot: BlowSpot): Matrix3 =>
  matrix3((i, j) => responseCovariance(spot, i, spot, j));

interface Solved {
  readonly lower: Float64Array;
  readonly surprises: Float64Array;
  readonly noises: readonly Matrix3[];
  readonly weights: readonly number[];
}

interface LeftOut {
  /** Expected products of the effects at this one's spot, as far as all other sets tell. */
  readonly squares: Matrix3;
  /** Squared Mahalanobis distance of the set from that, and over how many values. */
  readonly distance: number;
  readonly values: number;
}

/**
 * Each set against what all others say of it, without fitting again (Rasmussen & Williams, Gaussian Processes for Machine
 * Learning, 2006, eq. 5.12, for blocks of rows). With K the covariance of all rows (cents², noise included), y the
 * surprises (cents) and B the block of K⁻¹ at the set's own rows, the set lies away = B⁻¹·(K⁻¹·y) from what the others
 * predict, and `spread` = B⁻¹ is the covariance of that distance.
 */
function leaveOneOut(
  sets: readonly PlacedSet[],
  rows: readonly Row[],
  { lower, surprises, noises, weights }: Solved,
): readonly LeftOut[] {
  const size = rows.length;
  const triangle = inverseTriangle(lower, size);
  const answer = solveCholesky(lower, size, surprises);
  return sets.map((set, k) => {
    const own = rows.flatMap((row, r) => (row.set === k ? [{ row, r }] : []));
    const count = own.length;
    const { mean } = priorOf(set.spot);
    const prior = priorCovariance(set.spot);
    if (count === 0) return { squares: expectedSquares(mean, prior), distance: 0, values: 0 };
    const block = Float64Array.from(
      own.flatMap((a) => own.map((b) => inverseEntry(triangle, size, a.r, b.r))),
    );
    const inner = inverseTriangle(choleskyOf(block, count), count);
    const spread = Float64Array.from(block, (_, at) =>
      inverseEntry(inner, count, Math.floor(at / count), at % count),
    );
    const away = own.map((_, a) =>
      own.reduce((sum, { r }, b) => sum + (spread[a * count + b] ?? 0) * (answer[r] ?? 0), 0),
    );
    const weight = weights[k] ?? 1;
    const noiseAt = (a: { row: Row }, b: { row: Row }): number =>
      noises[k]?.[a.row.partial][b.row.partial] ?? 0;
    // What the others leave in doubt about the effect: the distance between them and this set, less its own noise.
    const doubts = own.map((a, x) =>
      own.map(
        (b, y) => ((spread[x * count + y] ?? 0) - noiseAt(a, b) / weight) / set.strength ** 2,
      ),
    );
    own.forEach((a, x) => {
      own.forEach((b, y) => {
        spread[x * count + y] = (spread[x * count + y] ?? 0) + noiseAt(a, b) * (1 - 1 / weight);
      });
    });
    const scaled = solveCholesky(choleskyOf(spread, count), count, Float64Array.from(away));
    const distance = away.reduce((sum, each, x) => sum + each * (scaled[x] ?? 0), 0);
    const at = mapThree(partialIndices, (i) => own.findIndex(({ row }) => row.partial === i));
    const effect = mapThree(mean, (expected, i) => {
      const row = own[at[i]]?.row;
      return row ? expected + (row.surprise - (away[at[i]] ?? 0)) / row.strength : expected;
    });
    const squares = expectedSquares(
      effect,
      matrix3((i, j) => doubts[at[i]]?.[at[j]] ?? prior[i][j]),
    );
    return { squares, distance, values: count };
  });
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < one.length; k++) sum += (one[k] ?? 0) * (other[k] ?? 0);
  return sum;
}
