// Sign of a choked note: something touches it, and it stops ringing far too soon.
import type { Strike } from '../measurement/strike';
import { meanOf, median } from '../numbers/averages';
import type { DamageEvidence, DamageSign } from './damage-evidence';
import { damageLimits } from './damage-limits';

/** The sign `choked`, or none. */
export function chokedSign(evidence: DamageEvidence): readonly DamageSign[] {
  const { strikes, neighbours, before, knocks } = evidence;
  const own = turnsOf(strikes);
  const usual = neighbours.flatMap((each) => turnsOf(each) ?? []);
  const againstNeighbours =
    usual.length >= damageLimits.fewestNeighbours ? ratio(own, median(usual)) : null;
  const againstBefore = before && ratio(own, turnsOf(before));
  const isSilent = strikes.length === 0 && knocks >= damageLimits.fewestKnocks;
  const parts = [againstNeighbours, againstBefore].flatMap((part) => part ?? []);
  const isShort = parts.length > 0 && Math.max(...parts) < damageLimits.chokedPart;
  if (!isSilent && !isShort) return [];
  return [{ kind: 'choked', againstNeighbours, againstBefore, knocks }];
}

/**
 * Time constant in turns of the note, the geometric mean of its strikes (energy exchange makes each longer or shorter):
 * high notes ring shorter, but in turns about as long (T60 2 s at C4 and 0.5 s at E6 are 523 and 659 turns), so notes
 * of all registers compare. Null without a strike.
 */
function turnsOf(strikes: readonly Strike[]): number | null {
  const logs = strikes.map(({ isInferred, fundamental, octave }) => {
    // An inferred fundamental has no decay of its own.
    const { decaySeconds, hz } = isInferred && octave ? octave : fundamental;
    return Math.log(decaySeconds * hz);
  });
  const mean = meanOf(logs);
  return mean === null ? null : Math.exp(mean);
}

const ratio = (own: number | null, usual: number | null): number | null =>
  own !== null && usual !== null && usual > 0 ? own / usual : null;
