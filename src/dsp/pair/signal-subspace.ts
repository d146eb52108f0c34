// The few directions in which all windows of a narrow band mostly point: what its lines leave there.
import type { BandSignal } from '../spectrum/band-signal';

/** Orthonormal complex vectors of one length. */
export interface Subspace {
  readonly re: readonly Float64Array[];
  readonly im: readonly Float64Array[];
  readonly length: number;
}

/**
 * Spare directions that are followed as well, so that the wanted ones settle sooner; and how often (chosen, no source).
 */
const spare = 2;
const rounds = 8;

/**
 * The `size` strongest directions of all windows w of `length` samples: the eigenvectors of the largest eigenvalues of
 * their covariance C = Σ w·wᴴ, by orthogonal iteration, U ← orthonormalised C·U, which lets the strongest outgrow the
 * rest (Golub & Van Loan, Matrix Computations, ch. 8.2). It begins with windows of the band itself: nothing is left to
 * chance. The arrays are the band's work arrays.
 */
export function signalSubspace(band: BandSignal, length: number, size: number): Subspace {
  const { count, work } = band;
  const windows = count - length + 1;
  const width = Math.min(size + spare, length, windows);
  const take = (): Float64Array[] => Array.from({ length: width }, () => work.take(length));
  const covarianceRe = work.take(length * length);
  const covarianceIm = work.take(length * length);
  fillCovariance(band, length, covarianceRe, covarianceIm);
  let basis = { re: take(), im: take(), length };
  let next = { re: take(), im: take(), length };
  for (let k = 0; k < width; k++) {
    const at = Math.round((k * (windows - 1)) / Math.max(1, width - 1));
    for (let n = 0; n < length; n++) {
      basis.re[k][n] = band.re[at + n];
      basis.im[k][n] = band.im[at + n];
    }
  }
  orthonormalise(basis);
  for (let round = 0; round < rounds; round++) {
    for (let k = 0; k < width; k++) multiply(covarianceRe, covarianceIm, basis, next, k);
    [basis, next] = [next, basis];
    orthonormalise(basis);
  }
  return { re: basis.re.slice(0, size), im: basis.im.slice(0, size), length };
}

/**
 * Row-major sums over all windows of z(i)·conj z(j). Down a diagonal each sum is the one before it with one product more
 * at its end and one less at its start.
 */
function fillCovariance(
  { re, im, count }: BandSignal,
  length: number,
  toRe: Float64Array,
  toIm: Float64Array,
): void {
  const windows = count - length + 1;
  for (let lag = 0; lag < length; lag++) {
    let sumRe = 0;
    let sumIm = 0;
    const add = (n: number, sign: number): void => {
      const a = re[n];
      const b = im[n];
      const c = re[n + lag];
      const d = im[n + lag];
      sumRe += sign * (a * c + b * d);
      sumIm += sign * (b * c - a * d);
    };
    for (let n = 0; n < windows; n++) add(n, 1);
    for (let row = 0; row + lag < length; row++) {
      const column = row + lag;
      toRe[row * length + column] = sumRe;
      toIm[row * length + column] = sumIm;
      toRe[column * length + row] = sumRe;
      toIm[column * length + row] = -sumIm;
      add(row, -1);
      if (column + 1 < length) add(row + windows, 1);
    }
  }
}

/** `to`[k] = matrix · `from`[k]. */
function multiply(
  matrixRe: Float64Array,
  matrixIm: Float64Array,
  from: Subspace,
  to: Subspace,
  k: number,
): void {
  const [x, y, outRe, outIm] = [from.re[k], from.im[k], to.re[k], to.im[k]];
  const { length } = from;
  for (let row = 0; row < length; row++) {
    let re = 0;
    let im = 0;
    for (let n = 0, at = row * length; n < length; n++, at++) {
      const a = matrixRe[at];
      const b = matrixIm[at];
      const c = x[n];
      const d = y[n];
      re += a * c - b * d;
      im += a * d + b * c;
    }
    outRe[row] = re;
    outIm[row] = im;
  }
}

/** Gram and Schmidt, each vector against those before it, twice; one that is lost in rounding becomes zero. */
function orthonormalise({ re, im, length }: Subspace): void {
  for (let k = 0; k < re.length; k++) {
    const [x, y] = [re[k], im[k]];
    const before = normOf(x, y, length);
    for (let pass = 0; pass < 2; pass++) {
      for (let j = 0; j < k; j++) takeOut(x, y, re[j], im[j], length);
    }
    const norm = normOf(x, y, length);
    const scale = norm > 1e-14 * before ? 1 / norm : 0;
    for (let n = 0; n < length; n++) {
      x[n] = scale * x[n];
      y[n] = scale * y[n];
    }
  }
}

function normOf(x: Float64Array, y: Float64Array, length: number): number {
  let sum = 0;
  for (let n = 0; n < length; n++) sum += x[n] ** 2 + y[n] ** 2;
  return Math.sqrt(sum);
}

function takeOut(
  x: Float64Array,
  y: Float64Array,
  unitRe: Float64Array,
  unitIm: Float64Array,
  length: number,
): void {
  let re = 0;
  let im = 0;
  for (let n = 0; n < length; n++) {
    const a = unitRe[n];
    const b = unitIm[n];
    re += a * x[n] + b * y[n];
    im += a * y[n] - b * x[n];
  }
  for (let n = 0; n < length; n++) {
    const a = unitRe[n];
    const b = unitIm[n];
    x[n] = x[n] - (a * re - b * im);
    y[n] = y[n] - (a * im + b * re);
  }
}
