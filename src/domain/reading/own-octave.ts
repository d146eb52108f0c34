// Two lines at the octave: one is the note's own, the other the partner's. The damping test tells which.
import type { Strike } from '../measurement/strike';
import { combine } from './combine';

export interface OwnOctaves {
  /** The strikes with `octave` and `octaveRival` exchanged where the other line is the note's own. */
  readonly strikes: readonly Strike[];
  /** Nobody knows yet which of the two lines is the note's own. */
  readonly isOpen: boolean;
}

/**
 * Says for every strike of one note which of two lines at the octave is its own. A settled strike with only
 * one line there (the partner damped, or silent) shows the own one: the line nearest to it is taken in the
 * others. Without such a strike the question stays open; then all are sorted alike, so that nothing is ever
 * averaged across the two lines.
 */
export function ownOctaves(strikes: readonly Strike[]): OwnOctaves {
  if (strikes.every((strike) => !strike.octaveRival)) return { strikes, isOpen: false };
  const damped = strikes.flatMap(({ octave, octaveRival, provisional }) =>
    octave && !octaveRival && !provisional ? [{ ...octave, share: 1 }] : [],
  );
  if (damped.length === 0) return { strikes: sortedAlike(strikes), isOpen: true };
  const own = combine(damped).cents;
  return { strikes: strikes.map((strike) => withOctaveNear(strike, own)), isOpen: false };
}

/** The strike with the nearer of its two octave lines as its own. */
export function withOctaveNear(strike: Strike, own: number): Strike {
  const { octave, octaveRival } = strike;
  if (!octave || !octaveRival) return strike;
  const isOther = Math.abs(octaveRival.cents - own) < Math.abs(octave.cents - own);
  return isOther ? exchanged(strike) : strike;
}

/** The lower line in all of them, or the upper one: whichever the ear more often thought likelier, then the newest. */
function sortedAlike(strikes: readonly Strike[]): readonly Strike[] {
  const isLower = ({ octave, octaveRival }: Strike): boolean =>
    octave !== null && octaveRival !== null && octave.cents < octaveRival.cents;
  const double = strikes.filter(({ octave, octaveRival }) => octave && octaveRival);
  const lower = double.filter(isLower).length;
  const newest = double.at(-1);
  const takesLower =
    2 * lower === double.length
      ? newest !== undefined && isLower(newest)
      : 2 * lower > double.length;
  return strikes.map((strike) => {
    // A first look sees one line where there may be two.
    if (!strike.octaveRival) return { ...strike, octave: null };
    return isLower(strike) === takesLower ? strike : exchanged(strike);
  });
}

function exchanged(strike: Strike): Strike {
  const { octave, octaveRival } = strike;
  if (!octave || !octaveRival) return strike;
  const { note, beatHz, ...line } = octaveRival;
  return { ...strike, octave: line, octaveRival: { ...octave, note, beatHz } };
}
