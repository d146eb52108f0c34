// A straight line that a few wild points do not tilt.
import { median } from './averages';

export interface MedianSlope {
  readonly slope: number;
  /** The ends of the interval of that confidence. */
  readonly low: number;
  readonly high: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The median of the slopes between all pairs of points, with the interval between two of those slopes by the
 * large-sample ranks of Kendall's statistic with ties (P. K. Sen, J. Am. Stat. Assoc. 63, 1379, 1968). `z`: how many
 * standard errors of that statistic the interval spans on each side, 1.96 for 95 %. Null without two different x.
 */
export function medianSlope(points: readonly Point[], z = 1.96): MedianSlope | null {
  const slopes = points
    .flatMap((one, k) =>
      points
        .slice(k + 1)
        .filter((other) => other.x !== one.x)
        .map((other) => (other.y - one.y) / (other.x - one.x)),
    )
    .sort((low, high) => low - high);
  const slope = median(slopes);
  if (slope === null) return null;
  const spread =
    z *
    Math.sqrt(
      Math.max(
        0,
        pairsVariance(points.length) -
          tiesOf(points.map(({ x }) => x)) -
          tiesOf(points.map(({ y }) => y)),
      ),
    );
  const last = slopes.length - 1;
  const below = Math.max(0, Math.round((slopes.length - spread) / 2) - 1);
  const above = Math.min(last, Math.round((slopes.length + spread) / 2));
  return { slope, low: slopes[below] ?? slope, high: slopes[above] ?? slope };
}

const pairsVariance = (count: number): number => (count * (count - 1) * (2 * count + 5)) / 18;

/** By how much equal values reduce the variance. */
function tiesOf(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].reduce((sum, count) => sum + pairsVariance(count), 0);
}
