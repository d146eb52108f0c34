// A note whose pitch walks: every strike lower (or higher) than the one before, by more than chance.
import type { Strike } from '../measurement/strike';
import { usualScatter } from '../numbers/combine';
import { type Cents, cents } from '../tuning/units';

export interface Walk {
  /** Signed: below zero, each strike is lower. */
  readonly centsPerStrike: Cents;
  /** The strikes of the walk, oldest first. */
  readonly strikes: readonly Strike[];
}

const fewest = 4;
/** From the first strike to the last, cents. */
const leastDistance = 1;
/** The slope in its standard errors. */
const significance = 3;
/** One step that makes up more of the way than this is a jump: a note that was moved, or a bad strike. */
const largestStep = 0.6;
/** How many strikes the usual scatter weighs against the residuals of the line. */
const priorStrikes = 1;

/** The clearest walk that ends with the newest settled strike, or null. First looks are too rough for it. */
export function walkOf(strikes: readonly Strike[]): Walk | null {
  const settled = strikes.filter((strike) => !strike.provisional);
  let clearest: (Walk & { readonly clearness: number }) | null = null;
  for (let first = 0; first + fewest <= settled.length; first++) {
    const walk = walkThrough(settled.slice(first));
    if (walk && walk.clearness > (clearest?.clearness ?? 0)) clearest = walk;
  }
  return clearest;
}

function walkThrough(strikes: readonly Strike[]): (Walk & { readonly clearness: number }) | null {
  const { slope, sigma } = slopeOf(strikes);
  const clearness = Math.abs(slope) / sigma;
  if (clearness <= significance) return null;
  const values = strikes.map((strike) => strike.fundamental);
  const steps = values.slice(1).map((value, k) => {
    const before = values[k] ?? value;
    return {
      // Along the direction of the walk.
      size: (value.cents - before.cents) * Math.sign(slope),
      error: Math.hypot(value.sigmaCents, before.sigmaCents),
    };
  });
  const distance = steps.reduce((sum, { size }) => sum + size, 0);
  if (distance < leastDistance) return null;
  // Always the same direction, but for steps that the standard errors hide; the newest step still goes on.
  const hasTurned = steps.some(({ size, error }) => size < -error || size > largestStep * distance);
  const last = steps.at(-1);
  if (hasTurned || !last || last.size <= last.error) return null;
  return { centsPerStrike: cents(slope), strikes, clearness };
}

/**
 * Weighted least-squares line through the fundamentals against the number of the strike: its slope and the
 * standard error of that, from the stated errors and the scatter about the line.
 */
function slopeOf(strikes: readonly Strike[]): { slope: number; sigma: number } {
  const usual = lineThrough(strikes, usualScatter);
  const scatter =
    (priorStrikes * usualScatter ** 2 + usual.residual) / (priorStrikes + strikes.length - 2);
  return lineThrough(strikes, Math.max(usualScatter, Math.sqrt(scatter)));
}

function lineThrough(strikes: readonly Strike[], scatter: number) {
  const points = strikes.map(({ fundamental }, x) => ({
    x,
    y: fundamental.cents,
    weight: 1 / (fundamental.sigmaCents ** 2 + scatter ** 2),
  }));
  const sum = (of: (point: (typeof points)[number]) => number): number =>
    points.reduce((total, point) => total + of(point), 0);
  const weights = sum(({ weight }) => weight);
  const x0 = sum(({ x, weight }) => x * weight) / weights;
  const y0 = sum(({ y, weight }) => y * weight) / weights;
  const width = sum(({ x, weight }) => weight * (x - x0) ** 2);
  const slope = sum(({ x, y, weight }) => weight * (x - x0) * (y - y0)) / width;
  return {
    slope,
    sigma: Math.sqrt(1 / width),
    residual: sum(({ x, y }) => (y - y0 - slope * (x - x0)) ** 2),
  };
}
