// Values of a note's three partials side by side, for the arithmetic of what blows change.

/** Of the fundamental, the octave and the third partial, in this order. */
export type ThreePartials<T = number> = readonly [fundamental: T, octave: T, third: T];

export const partialIndices = [0, 1, 2] as const;
export type PartialIndex = (typeof partialIndices)[number];

export const mapThree = <T, U>(
  [fundamental, octave, third]: ThreePartials<T>,
  of: (value: T, index: PartialIndex) => U,
): ThreePartials<U> => [of(fundamental, 0), of(octave, 1), of(third, 2)];

/** Rows of a symmetric 3 × 3 matrix. */
export type Matrix3 = ThreePartials<ThreePartials>;

export const matrix3 = (of: (row: PartialIndex, column: PartialIndex) => number): Matrix3 =>
  mapThree(partialIndices, (row) => mapThree(partialIndices, (column) => of(row, column)));

export const dot3 = (one: ThreePartials, other: ThreePartials): number =>
  one[0] * other[0] + one[1] * other[1] + one[2] * other[2];

export const times3 = (matrix: Matrix3, vector: ThreePartials): ThreePartials =>
  mapThree(matrix, (row) => dot3(row, vector));

export const diagonalOf = (matrix: Matrix3): ThreePartials => mapThree(matrix, (row, k) => row[k]);
