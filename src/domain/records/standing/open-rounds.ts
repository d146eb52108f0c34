// Rounds that were begun and not ended: they can be resumed.
import { type PanRecords, type RoundStart, roundOf } from '../rack-records';
import { olderFirst } from '../record-order';
import { withoutErased } from './without-erased';

/** The rounds of a pan without an end, newest first; erased rounds are none, and an erased end ends nothing. */
export function openRounds(records: PanRecords): readonly RoundStart[] {
  const { rounds, ends } = withoutErased(records);
  const ended = new Set(ends.map((end) => end.round));
  return rounds
    .filter((start) => !ended.has(roundOf(start)))
    .sort((one, other) => olderFirst(other, one));
}
