// The knock checks of a pan that still count, and the rounds that belong to them.

import {
  type KnockCheck,
  type PanRecords,
  type RoundStart,
  roundOf,
} from '../records/rack-records';
import { isBefore, olderFirst } from '../records/record-order';
import { withoutErased } from '../records/standing/without-erased';
import { newestFinishedRounds } from '../rounds/finished-rounds';
import { lastTuning } from '../rounds/tuner-baseline';

/** Newest first; what was seen before a professional put the pan right is over. */
export function checksSinceTuning(records: PanRecords): readonly KnockCheck[] {
  const tunedAt = lastTuning(records)?.visitedAt ?? 0;
  return withoutErased(records)
    .knockChecks.filter(({ at }) => at > tunedAt)
    .sort((one, other) => olderFirst(other, one));
}

/**
 * What a round is compared with: of `rounds`, newest first, the newest one before the pan was knocked, or before the
 * round where it was not knocked since; one with three strikes a note where there is one.
 */
export function roundBefore(
  rounds: readonly RoundStart[],
  round: RoundStart,
  check: KnockCheck | null,
): RoundStart | null {
  const isSinceKnock =
    check !== null && (roundOf(round) === check.round || !isBefore(round, check));
  const earlier = rounds.filter(
    (each) =>
      isBefore(each, round) &&
      roundOf(each) !== check?.round &&
      (!isSinceKnock || isBefore(each, check)),
  );
  return earlier.find(({ way }) => way !== 'quick') ?? earlier[0] ?? null;
}

/** A finished soft round, the check it belongs to, and what it is compared with. */
export interface SoftRound {
  readonly check: KnockCheck;
  readonly round: RoundStart;
  readonly before: RoundStart | null;
}

/** Of the newest knock check since the last professional tuning that has one. */
export function newestSoftRound(records: PanRecords): SoftRound | null {
  const rounds = newestFinishedRounds(records, Number.POSITIVE_INFINITY);
  for (const check of checksSinceTuning(records)) {
    const round = rounds.find((each) => roundOf(each) === check.round);
    if (round) return { check, round, before: roundBefore(rounds, round, check) };
  }
  return null;
}
