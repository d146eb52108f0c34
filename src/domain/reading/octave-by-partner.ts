// Two lines at a note's octave: the partner, measured by itself, tells which of them is the note's own.
import type { Cents } from '../tuning/units';
import type { JudgedValues } from './judge-note';

/** The partner's line lies this close to where the partner was measured, cents: strikes agree within it. */
const near = 2.5;
/** The other line must lie this much farther away, cents, or the two cannot be told apart (chosen, no source). */
const apart = 2.5;

/**
 * The values with their own octave, the partner's line taken out; unchanged where there is no second line or
 * where the partner's fundamental (cents against its target, both at the same A4) does not decide.
 */
export function withOctaveByPartner<Values extends JudgedValues>(
  values: Values,
  partner: Cents | null,
): Values {
  const { octave, octaveRival } = values;
  if (!octave || !octaveRival || partner === null) return values;
  const away = Math.abs(octave.cents - partner);
  const rivalAway = Math.abs(octaveRival.cents - partner);
  if (Math.min(away, rivalAway) > near || Math.abs(away - rivalAway) < apart) return values;
  const { note, ...line } = octaveRival;
  return { ...values, octave: away > rivalAway ? octave : line, octaveRival: null };
}
