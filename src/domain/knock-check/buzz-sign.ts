// Sign of a buzz: noise tied to the strike, more of it than this pan's other notes have in this room.
import type { Strike } from '../measurement/strike';
import { decibels } from '../tuning/units';
import { damageLimits } from './damage-limits';
import type { DamageSign, NoteEvidence } from './damage-signs';
import { middleOf } from './middle-of';

/** The sign `buzzing`, or none. */
export function buzzSign({ strikes, neighbours }: NoteEvidence): readonly DamageSign[] {
  const own = buzzOf(strikes);
  if (own === null || own < damageLimits.buzzDb) return [];
  const usual = neighbours.flatMap((each) => buzzOf(each) ?? []);
  const isKnown = usual.length >= damageLimits.fewestNeighbours;
  const over = isKnown ? own - (middleOf(usual) ?? own) : null;
  if (over !== null && over < damageLimits.buzzOverNeighboursDb) return [];
  return [
    {
      kind: 'buzzing',
      buzzDb: decibels(own),
      overNeighboursDb: over === null ? null : decibels(over),
    },
  ];
}

/** The middle one of the strikes, dB; null where it was not measured. */
const buzzOf = (strikes: readonly Strike[]): number | null =>
  middleOf(strikes.flatMap(({ buzzDb }) => buzzDb ?? []));
