// Sign of a buzz: noise tied to the strike, more of it than this pan's other notes have in this room.
import { meanBuzz } from '../measurement/mean-buzz';
import { median } from '../numbers/averages';
import { decibels } from '../tuning/units';
import type { DamageEvidence, DamageSign } from './damage-evidence';
import { damageLimits } from './damage-limits';

/** The sign `buzzing`, or none. */
export function buzzSign({
  strikes,
  neighbours,
  heardAsSeveral,
}: DamageEvidence): readonly DamageSign[] {
  const own = meanBuzz(strikes);
  const usual = neighbours.flatMap((each) => meanBuzz(each) ?? []);
  const middle = usual.length >= damageLimits.fewestNeighbours ? median(usual) : null;
  const over =
    own === null || middle === null ? null : own - Math.max(middle, damageLimits.noBuzzDb);
  const isLoud =
    own !== null &&
    own >= damageLimits.buzzDb &&
    (over === null || over >= damageLimits.buzzOverNeighboursDb);
  const isDouble =
    heardAsSeveral >= damageLimits.fewestHeardAsSeveral && heardAsSeveral >= strikes.length;
  if (!isLoud && !isDouble) return [];
  return [
    {
      kind: 'buzzing',
      buzzDb: own === null ? null : decibels(own),
      overNeighboursDb: over === null ? null : decibels(over),
      heardAsSeveral,
    },
  ];
}
