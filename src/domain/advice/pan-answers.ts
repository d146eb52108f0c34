// What blows have done on a pan, place by place: what was measured, not what is expected.

import { median } from '../numbers/averages';
import { mapThree, partialIndices, type ThreePartials } from '../numbers/three-partials';
import { allWheres, type BlowWhere } from '../records/blow-places';
import type { PanRecords, ReadingRecord } from '../records/rack-records';
import { readingsWithoutErased, withoutErased } from '../records/standing/without-erased';
import type { MidiNote } from '../tuning/units';
import { type BlowSet, blowSetsOf } from './blow-sets';

/** How far a partial moved, cents against its fixed target, for each usual set of light blows. */
export interface PartialAnswer {
  /** The median of the sets. */
  readonly middle: number;
  readonly lowest: number;
  readonly highest: number;
  /** Sets in which it was measured before and after. */
  readonly sets: number;
}

export interface PlaceAnswer extends BlowWhere {
  readonly sets: number;
  /** The notes that were hammered there, lowest first. */
  readonly notes: readonly MidiNote[];
  /** Null where it was never measured before and after. */
  readonly partials: ThreePartials<PartialAnswer | null>;
}

/**
 * The places that were hammered on the pan, in the order in which places are always told; empty where no set was logged
 * and measured before and after. Each set counts the same, scaled to the usual number of light blows (`strengthOf`).
 */
export function panAnswers(
  records: PanRecords,
  readings: readonly ReadingRecord[],
): readonly PlaceAnswer[] {
  const valid = readingsWithoutErased(readings, records.erasures);
  const sets = blowSetsOf(withoutErased(records).blows, valid);
  return allWheres.flatMap(({ place, side }) => {
    const here = sets.filter((set) => set.place === place && set.side === side);
    if (here.length === 0) return [];
    const notes = [...new Set(here.map(({ note }) => note))].sort((low, high) => low - high);
    const partials = mapThree(partialIndices, (k) => answerOf(here, k));
    return [{ place, side, sets: here.length, notes, partials }];
  });
}

function answerOf(sets: readonly BlowSet[], partial: 0 | 1 | 2): PartialAnswer | null {
  const moved = sets.flatMap(({ change, strength }) => {
    const cents = change[partial];
    return cents === null ? [] : [cents / strength];
  });
  const middle = median(moved);
  if (middle === null) return null;
  return { middle, lowest: Math.min(...moved), highest: Math.max(...moved), sets: moved.length };
}
