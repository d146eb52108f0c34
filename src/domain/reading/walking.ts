// A note whose pitch walks: every strike lower (or higher) than the one before, by more than chance.
import type { Strike } from '../measurement/strike';
import { sumOf } from '../numbers/averages';
import { fitScatteredLine, type StraightLine } from '../numbers/line-fit';
import { type Cents, cents } from '../tuning/units';
import { usualScatter } from './combine';

export interface Walk {
  /** Signed: below zero, each strike is lower. */
  readonly centsPerStrike: Cents;
  /** The strikes of the walk, oldest first. */
  readonly strikes: readonly Strike[];
}

/** Fewest strikes of a walk (chosen, no source, as are the limits below). */
const fewest = 4;
/** Distance from the first strike to the last, cents. */
const leastDistance = 1;
/** The slope as a multiple of its standard error. */
const significance = 3;
/**
 * If one step makes up more than this share of the way, it is a jump (a note that was moved, or a bad strike), not a
 * walk.
 */
const largestStep = 0.6;
/** How many strikes the usual scatter counts as, against the residuals of the line. */
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
  const line = slopeOf(strikes);
  if (!line) return null;
  const { slope } = line;
  const clearness = Math.abs(slope) / line.sigma;
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
  const distance = sumOf(steps, ({ size }) => size);
  if (distance < leastDistance) return null;
  // Always in the same direction, except for steps within the standard errors; and the newest step still goes on.
  const hasTurned = steps.some(({ size, error }) => size < -error || size > largestStep * distance);
  const last = steps.at(-1);
  if (hasTurned || !last || last.size <= last.error) return null;
  return { centsPerStrike: cents(slope), strikes, clearness };
}

/** The slope of the fundamentals against the number of the strike; null where they are all one strike. */
const slopeOf = (strikes: readonly Strike[]): StraightLine | null =>
  fitScatteredLine(
    strikes.map(({ fundamental }, x) => ({
      x,
      y: fundamental.cents,
      sigma: fundamental.sigmaCents,
    })),
    { usual: usualScatter, weighs: priorStrikes, least: usualScatter },
  );
