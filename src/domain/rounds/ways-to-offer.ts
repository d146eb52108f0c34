// In which order the kinds of round are offered: the one that was used last on this pan comes first.
import type { PanRecords, RoundWay } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { withoutErased } from '../records/standing/without-erased';

const usualWays: readonly RoundWay[] = ['guided', 'quick', 'free'];

/** All kinds of round, the last used one first. The soft round of a knock check is nobody's choice and does not count. */
export function waysToOffer(records: PanRecords): readonly RoundWay[] {
  const { rounds, knockChecks } = withoutErased(records);
  const soft = new Set<string | null>(knockChecks.map(({ round }) => round));
  const [last] = rounds
    .filter(({ id }) => !soft.has(id))
    .sort((one, other) => olderFirst(other, one));
  return last ? [last.way, ...usualWays.filter((way) => way !== last.way)] : usualWays;
}
