// Several measurements of one value brought together, so that a single bad one counts for little.
import { sumOf, weightedMedian } from '../numbers/averages';
import { type Cents, cents } from '../tuning/units';

export interface Weighed {
  readonly cents: number;
  /** One standard error of this measurement. */
  readonly sigmaCents: number;
  /** 1 for a good strike, less for one that should count for less. */
  readonly share: number;
}

export interface Combined {
  readonly cents: Cents;
  /** One standard error of the combined value, with the scatter from strike to strike in it. */
  readonly sigmaCents: Cents;
}

/**
 * Scatter from strike to strike beyond the standard errors that is expected before any is seen, cents (this and the
 * next two: chosen, no source).
 */
export const usualScatter = 0.3;
/** How many strikes that expectation counts as. */
const priorStrikes = 1;
const leastScatter = 0.05;
/** Beyond this many standard deviations a measurement pulls no harder (Huber's rule; the number chosen, no source). */
const reach = 2;
const rounds = 40;
/**
 * Rounds that move a value by less than this, cents, change nothing that is ever shown; a note's history combines
 * hundreds of times.
 */
const settled = 1e-7;

/**
 * Weighted mean of at least one measurement: weights share / (σ² + scatter²), the scatter estimated from
 * the measurements themselves, and the pull of each limited (Huber, Ann. Math. Statist. 35, 73, 1964).
 */
export function combine(values: readonly Weighed[]): Combined {
  if (values.length === 0) throw new Error('nothing to combine');
  let centre = start(values);
  const scatter = scatterOf(values, centre);
  const pulls = values.map(({ cents: at, sigmaCents, share }) => {
    const spread = Math.sqrt(sigmaCents ** 2 + scatter ** 2);
    return { at, spread, near: share / spread ** 2 };
  });
  let weights = 0;
  for (let n = 0; n < rounds; n++) {
    let sum = 0;
    weights = 0;
    for (const { at, spread, near } of pulls) {
      const away = Math.abs(at - centre) / spread;
      const weight = near * (away > reach ? reach / away : 1);
      // Summed from the centre: numbers far from zero lose no digits.
      sum += weight * (at - centre);
      weights += weight;
    }
    const moved = sum / weights;
    centre += moved;
    if (Math.abs(moved) < settled) break;
  }
  return { cents: cents(centre), sigmaCents: cents(Math.sqrt(1 / weights)) };
}

/**
 * Scatter beyond the standard errors. A measurement with a large standard error says little about it, and
 * one far away is cut off at the reach, so that it cannot enlarge the scatter it is judged by.
 */
function scatterOf(values: readonly Weighed[], centre: number): number {
  const parts = values.map(({ cents: at, sigmaCents }) => {
    const square = sigmaCents ** 2;
    const informed = (usualScatter ** 2 / (square + usualScatter ** 2)) ** 2;
    return { away: (at - centre) ** 2, square, informed };
  });
  const known = sumOf(parts, ({ informed }) => informed);
  const count = priorStrikes + Math.max(0, known - 1);
  // Starts from the largest estimate and goes down, so that nothing is cut off in the first round.
  let variance = Number.POSITIVE_INFINITY;
  for (let n = 0; n < rounds; n++) {
    let sum = priorStrikes * usualScatter ** 2;
    for (const { away, square, informed } of parts) {
      const limit = reach ** 2 * (square + variance);
      sum += informed * (Math.min(away, limit) - square);
    }
    const next = Math.max(leastScatter ** 2, sum / count);
    const moved = variance - next;
    variance = next;
    if (Math.abs(moved) < settled) break;
  }
  return Math.sqrt(variance);
}

const start = (values: readonly Weighed[]): number =>
  weightedMedian(
    values.map(({ cents: value, sigmaCents, share }) => ({
      value,
      weight: share / (sigmaCents ** 2 + usualScatter ** 2),
    })),
  ) ?? 0;
