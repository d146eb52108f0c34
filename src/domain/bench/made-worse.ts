// Which partials work made worse on a note that is judged by its fundamental only: they are no fault of the note, but the
// tuner should know what the blows did.

import type { ThirdKind } from '../tuning/third-kind';
import type { ToleranceSet } from '../tuning/tolerances';
import type { Cents } from '../tuning/units';
import type { Judged } from '../tuning/verdict';

export interface PartialMadeWorse {
  readonly partial: 'octave' | ThirdKind;
  /** Against the own fundamental. */
  readonly before: Cents;
  readonly now: Cents;
}

/** A change to be told is at least this large, in cents: one or two cents are good enough (common practice, no source). */
const leastWorse = 2;
/** And sure: this many standard errors where they are stated. */
const sureErrors = 2;

/**
 * The octave and the third of a note above the highest that is judged by its partials, each if it lies further off its
 * own fundamental than before and beyond what is called good. Empty for all other notes: their verdict says it.
 */
export function partialsMadeWorse(
  before: Judged,
  now: Judged,
  { good, highestWithPartials }: ToleranceSet,
): readonly PartialMadeWorse[] {
  if (now.note <= highestWithPartials) return [];
  const [was, is] = [ownOctave(before), ownOctave(now)];
  const isSameThird = before.third?.kind === now.third?.kind;
  return [
    ...(was && is && isWorse(was, is, good.main) ? [told('octave', was, is)] : []),
    ...(isSameThird && before.third && now.third && isWorse(before.third, now.third, good.third)
      ? [told(now.third.kind, before.third, now.third)]
      : []),
  ];
}

type Line = NonNullable<Judged['octave']>;

/** Of two lines at the octave neither is known to be the note's own. */
const ownOctave = ({ octave, octaveRival }: Judged): Line | null => (octaveRival ? null : octave);

function isWorse(before: Line, now: Line, good: Cents): boolean {
  const further = Math.abs(now.centsFromOwn) - Math.abs(before.centsFromOwn);
  const error = Math.hypot(before.sigmaCents ?? 0, now.sigmaCents ?? 0);
  const isBeyond = Math.round(Math.abs(now.centsFromOwn)) > good;
  return isBeyond && further >= Math.max(leastWorse, sureErrors * error);
}

const told = (partial: PartialMadeWorse['partial'], before: Line, now: Line): PartialMadeWorse => ({
  partial,
  before: before.centsFromOwn,
  now: now.centsFromOwn,
});
