// How far a measured fundamental can be believed.
// Limits are chosen, no source.
import type { MeasuredPartial } from '../../domain/measurement/strike';
import { cents, centsBetween, hertz } from '../../domain/tuning/units';
import type { MeasuredLine } from '../line/measure-line';

/**
 * The largest fraction of the fundamental's energy that may be no steady line; above it the error is at least this,
 * cents.
 */
const largestUnexplained = 0.4;
const unsteadyCents = 3;
/** A bass note's fundamental near the noise is still worth more than one inferred from its partials, cents. */
const largestSigmaOfBass = 5;
/** If the settled frequency lies this far from the line first seen, there was no steady line, cents. */
const largestWander = 30;
const longestDecay = 4;

/** A bass note's fundamental that is too near the noise is better inferred from its partials. */
export const isSteady = (
  { unexplained }: MeasuredLine,
  { hz, sigmaCents, decaySeconds }: MeasuredPartial,
  seenHz: number,
): boolean =>
  unexplained <= largestUnexplained &&
  decaySeconds <= longestDecay &&
  sigmaCents <= largestSigmaOfBass &&
  Math.abs(centsBetween(hertz(seenHz), hz)) <= largestWander;

/** A line that holds more than itself, or was measured far from where it was seen, is known no better than that. */
export function withDoubt(
  partial: MeasuredPartial,
  { unexplained }: MeasuredLine,
  seenHz: number,
): MeasuredPartial {
  const wander = Math.abs(centsBetween(hertz(seenHz), partial.hz));
  const doubt =
    (unexplained > largestUnexplained ? unsteadyCents : 0) + (wander > largestWander ? wander : 0);
  return doubt === 0
    ? partial
    : { ...partial, sigmaCents: cents(Math.hypot(partial.sigmaCents, doubt)) };
}
