// A few standard normal outcomes of three partials that stand for all of them.
import { choleskyOf } from './cholesky';
import { mapThree, partialIndices, type ThreePartials } from './three-partials';

/** Half of them; each has its mirror image, so that their mean is zero. */
const pairs = 16;

/** Quasi-random points: Halton, Numerische Mathematik 2 (1960) 84, in the bases 2, 3 and 5, made normal. */
const points: readonly ThreePartials[] = Array.from({ length: pairs }, (_, k) =>
  mapThree([2, 3, 5], (base) => normalAt(radicalInverse(k + 1, base))),
);

/** Their mean is zero and their covariance the unit matrix, as exactly as can be computed. */
export const likelyOutcomes: readonly ThreePartials[] = uncorrelated(points).flatMap((point) => [
  point,
  mapThree(point, (value) => -value),
]);

/** The same points, turned and stretched until the mean of their squares is 1 and that of their products 0. */
function uncorrelated(those: readonly ThreePartials[]): readonly ThreePartials[] {
  const squares = partialIndices.flatMap((i) =>
    partialIndices.map(
      (j) => those.reduce((sum, each) => sum + each[i] * each[j], 0) / those.length,
    ),
  );
  const [a = 1, , , b = 0, c = 1, , d = 0, e = 0, f = 1] = choleskyOf(
    Float64Array.from(squares),
    3,
  );
  return those.map(([x, y, z]) => {
    const [first, second] = [x / a, (y - (b * x) / a) / c];
    return [first, second, (z - d * first - e * second) / f];
  });
}

/** The digits of a number in this base, mirrored at the point. */
function radicalInverse(number: number, base: number): number {
  let sum = 0;
  for (let [rest, place] = [number, 1 / base]; rest > 0; rest = Math.floor(rest / base)) {
    sum += (rest % base) * place;
    place /= base;
  }
  return sum;
}

/** The standard normal value below which this part lies (Abramowitz & Stegun 26.2.23, error below 4.5·10⁻⁴). */
function normalAt(part: number): number {
  if (part > 0.5) return -normalAt(1 - part);
  const t = Math.sqrt(-2 * Math.log(part));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return above / below - t;
}
