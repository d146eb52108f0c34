import { type PanRecords, type RoundStart, roundOf } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { withoutErased } from '../records/standing/without-erased';

/** The newest finished rounds of a pan, newest first, at most `count`: those a card needs the readings of. */
export function newestFinishedRounds(records: PanRecords, count = 2): readonly RoundStart[] {
  let sorted = known.get(records);
  if (!sorted) {
    sorted = finishedRounds(records);
    known.set(records, sorted);
  }
  return sorted.slice(0, count);
}

/** Kept, because they are asked for again for every round of a history, and records never change. */
const known = new WeakMap<PanRecords, readonly RoundStart[]>();

function finishedRounds(records: PanRecords): readonly RoundStart[] {
  const { rounds, ends } = withoutErased(records);
  const finished = new Set(ends.filter((end) => end.ending === 'finished').map((end) => end.round));
  return rounds
    .filter((start) => finished.has(roundOf(start)))
    .sort((one, other) => olderFirst(other, one));
}
