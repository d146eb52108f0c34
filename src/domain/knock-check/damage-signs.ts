// Signs of damage in what was heard of one note, each with the figures behind it.
import type { Strike } from '../measurement/strike';
import { walkOf } from '../reading/walking';
import { buzzSign } from './buzz-sign';
import { chokedSign } from './choked-sign';
import type { DamageEvidence, DamageSign } from './damage-evidence';
import { doubletSign } from './doublet-sign';
import { missingPartialSigns } from './missing-partials';

/** The signs of damage of one note, in the order of the type; empty for a note that shows none. */
export function damageSigns(evidence: DamageEvidence): readonly DamageSign[] {
  const settled = (strikes: readonly Strike[]): readonly Strike[] =>
    strikes.filter((strike) => !strike.provisional);
  const clean: DamageEvidence = {
    ...evidence,
    strikes: settled(evidence.strikes),
    neighbours: evidence.neighbours.map(settled).filter((strikes) => strikes.length > 0),
    before: evidence.before && evidence.before.length > 0 ? settled(evidence.before) : null,
  };
  const choked = chokedSign(clean);
  return [
    ...missingPartialSigns(clean),
    ...choked,
    // The pitch of what hardly rings is too unsure to call it walking.
    ...(choked.length > 0 ? [] : walkingSign(clean)),
    ...buzzSign(clean),
    ...doubletSign(clean),
  ];
}

function walkingSign({ strikes }: DamageEvidence): readonly DamageSign[] {
  const walk = walkOf(strikes);
  if (!walk) return [];
  return [{ kind: 'walking', centsPerStrike: walk.centsPerStrike, strikes: walk.strikes.length }];
}
