// Which strikes of a note agree with each other, and what is off about one that does not.
import type { Strike } from '../measurement/strike';

/** Strikes agree when their fundamentals and octaves lie this close, cents (chosen, no source). */
const limits = { fundamental: 2.5, octave: 4 };

export type Disagreement = 'fundamental' | 'octave';

/** What keeps `strike` from agreeing with `other`, or null. A strike with a large standard error may lie farther off. */
export function disagreement(strike: Strike, other: Strike): Disagreement | null {
  const limit = Math.max(limits.fundamental, 3 * ownError(strike, other));
  if (Math.abs(strike.fundamental.cents - other.fundamental.cents) > limit) return 'fundamental';
  if (!strike.octave || !other.octave) return null;
  const octaveLimit = Math.max(limits.octave, 3 * strike.octave.sigmaCents);
  return Math.abs(strike.octave.cents - other.octave.cents) > octaveLimit ? 'octave' : null;
}

/**
 * That part of the fundamental's standard error by which two strikes can differ, cents. How far a note's octave lies
 * off twice its fundamental, which makes up most of an inferred one's error, is the same in every strike.
 */
function ownError(strike: Strike, other: Strike): number {
  if (!strike.isInferred || !other.isInferred) {
    const inferred = other.isInferred ? other.fundamental.sigmaCents : 0;
    return Math.max(strike.fundamental.sigmaCents, inferred);
  }
  return Math.max(strike.octave?.sigmaCents ?? 0, strike.third?.sigmaCents ?? 0);
}

/** The largest set of strikes that agree with one of them, in the order given; of two as large the newer one. */
export function agreeingStrikes(strikes: readonly Strike[]): AgreeingStrikes {
  let best: AgreeingStrikes = { strikes: [], middle: null };
  for (const middle of strikes) {
    const set = strikes.filter((each) => disagreement(each, middle) === null);
    if (set.length >= best.strikes.length) best = { strikes: set, middle };
  }
  return best;
}

export interface AgreeingStrikes {
  readonly strikes: readonly Strike[];
  /** The one that all the others agree with; null if there is none. */
  readonly middle: Strike | null;
}

const allAgree = (strikes: readonly Strike[]): boolean =>
  agreeingStrikes(strikes).strikes.length === strikes.length;

/** The newest strikes in a row that agree with each other, back to the first that does not. */
export function newestRun(strikes: readonly Strike[]): readonly Strike[] {
  let first = strikes.length - 1;
  while (first > 0 && allAgree(strikes.slice(first - 1))) first--;
  return strikes.slice(first);
}
