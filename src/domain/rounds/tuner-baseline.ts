// From when on a pan's changes are counted: the last professional tuning, and the round that shows what it left.

import type { PanRecords, RoundStart, TunerVisit } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { withoutErased } from '../records/standing/without-erased';
import { newestFinishedRounds } from './finished-rounds';
import { isUnsettled } from './round-result';

/** All visits that were not taken out, the newest first; of two on one day the one written later. */
export const tunerVisits = (records: PanRecords): readonly TunerVisit[] =>
  [...withoutErased(records).visits].sort(
    (one, other) => other.visitedAt - one.visitedAt || olderFirst(other, one),
  );

/** The newest visit after which the pan was as the tuner wanted it. */
export const lastTuning = (records: PanRecords): TunerVisit | null =>
  tunerVisits(records).find(({ startsBaseline }) => startsBaseline) ?? null;

/**
 * What changes are counted from.
 * `tuning`: the first round after the last professional tuning, null while there is none.
 * `first-round`: no tuning is known; the oldest round.
 */
export type Baseline =
  | { readonly kind: 'tuning'; readonly visit: TunerVisit; readonly round: RoundStart | null }
  | { readonly kind: 'first-round'; readonly round: RoundStart }
  | { readonly kind: 'none' };

/** A full round on a pan that had settled is taken before any earlier one that is less. */
export function tunerBaseline(records: PanRecords): Baseline {
  const visit = lastTuning(records);
  const oldestFirst = [...newestFinishedRounds(records, Number.POSITIVE_INFINITY)].reverse();
  if (visit) {
    const after = oldestFirst.filter(({ at }) => at >= visit.visitedAt);
    return { kind: 'tuning', visit, round: firstGood(after) };
  }
  const round = firstGood(oldestFirst);
  return round ? { kind: 'first-round', round } : { kind: 'none' };
}

const firstGood = (rounds: readonly RoundStart[]): RoundStart | null =>
  rounds.find(({ way, conditions }) => way !== 'quick' && !isUnsettled(conditions)) ??
  rounds[0] ??
  null;
