// Sign of a note that has come apart: two lines at the octave where there was one.
import type { OctaveRival, Strike } from '../measurement/strike';
import { median } from '../numbers/averages';
import { cents, centsBetween, hertz } from '../tuning/units';
import type { DamageEvidence, DamageSign } from './damage-evidence';
import { damageLimits } from './damage-limits';

type Double = Strike & { readonly octaveRival: OctaveRival };
const isDouble = (strike: Strike): strike is Double =>
  strike.octave !== null && strike.octaveRival !== null;

/** The sign `new-doublet`, or none; without a record from before nothing is new. */
export function doubletSign({ strikes, before, partnerHz }: DamageEvidence): readonly DamageSign[] {
  // One strike of several may show two lines where there is one.
  const doublesBefore = (before ?? []).filter(isDouble).length;
  if (!before || before.length === 0 || 2 * doublesBefore > before.length) return [];
  const doubles = strikes.filter(isDouble).filter((strike) => !isPartner(strike, partnerHz));
  if (doubles.length < damageLimits.leastShare * strikes.length) return [];
  const apart = median(
    doubles.map(({ octave, octaveRival }) =>
      Math.abs(centsBetween(octave?.hz ?? octaveRival.hz, octaveRival.hz)),
    ),
  );
  const beat = median(doubles.map(({ octaveRival }) => octaveRival.beatHz));
  if (apart === null || beat === null) return [];
  return [{ kind: 'new-doublet', apart: cents(apart), beatHz: hertz(beat) }];
}

/**
 * Whether one of the two lines is the partner's fundamental ringing along: the ear names a partner, but only as a
 * guess.
 */
const isPartner = ({ octave, octaveRival }: Double, partnerHz: number | null): boolean =>
  partnerHz !== null &&
  [octave, octaveRival].some(
    (line) => line && Math.abs(centsBetween(partnerHz, line.hz)) <= damageLimits.partnerReach,
  );
