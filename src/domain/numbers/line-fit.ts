// A straight line through points of known errors, and how far they scatter about it.
import { sumOf } from './averages';

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  /** One standard error of `y`. */
  readonly sigma: number;
}

export interface StraightLine {
  readonly slope: number;
  /** One standard error of the slope, as far as the errors and the scatter are known. */
  readonly sigma: number;
  /** Sum of the squared distances from the line, unweighted. */
  readonly residual: number;
}

/**
 * Weighted least-squares line, each point weighing 1 / (σ² + scatter²) (textbook; Press et al., *Numerical Recipes*,
 * "Fitting Data to a Straight Line"). Null where all points lie at one x.
 */
export function fitLine(points: readonly LinePoint[], scatter: number): StraightLine | null {
  const weighed = points.map(({ x, y, sigma }) => ({ x, y, w: 1 / (sigma ** 2 + scatter ** 2) }));
  const weights = sumOf(weighed, ({ w }) => w);
  const x0 = sumOf(weighed, ({ x, w }) => x * w) / weights;
  const y0 = sumOf(weighed, ({ y, w }) => y * w) / weights;
  const width = sumOf(weighed, ({ x, w }) => w * (x - x0) ** 2);
  if (!(width > 0)) return null;
  const slope = sumOf(weighed, ({ x, y, w }) => w * (x - x0) * (y - y0)) / width;
  const residual = sumOf(weighed, ({ x, y }) => (y - y0 - slope * (x - x0)) ** 2);
  return { slope, sigma: 1 / Math.sqrt(width), residual };
}

/** The scatter that is expected before any was seen, and how many points that expectation counts as. */
export interface ExpectedScatter {
  readonly usual: number;
  readonly weighs: number;
  /** The scatter is never taken to be less. */
  readonly least: number;
}

/** The line with the scatter that its own points show about a first one; null where all lie at one x. */
export function fitScatteredLine(
  points: readonly LinePoint[],
  { usual, weighs, least }: ExpectedScatter,
): StraightLine | null {
  const first = fitLine(points, usual);
  if (!first) return null;
  const seen = (weighs * usual ** 2 + first.residual) / (weighs + points.length - 2);
  return fitLine(points, Math.max(least, Math.sqrt(seen)));
}
