// Records without those that were erased. The erased ones stay where they are kept: an erasure can be taken back.
import type { Erasure, PanRecords, ReadingRecord, RecordId, RoundId } from '../rack-records';

/** The ids of all that is erased by an erasure in force. */
export function erasedIds(erasures: readonly Erasure[]): ReadonlySet<string> {
  const takenBack = erasuresTakenBack(erasures);
  return new Set(erasures.filter(({ id }) => !takenBack.has(id)).map(({ target }) => target));
}

/**
 * The erasures that are themselves erased by one in force. What is in force follows from which erases which, and
 * from no clock: two phones' clocks may differ. Of erasures in a circle (no phone writes such) all are in force.
 */
function erasuresTakenBack(erasures: readonly Erasure[]): ReadonlySet<string> {
  const byId = new Map<string, Erasure>(erasures.map((erasure) => [erasure.id, erasure]));
  const open = new Map<string, number>();
  for (const { target } of byId.values()) {
    if (byId.has(target)) open.set(target, (open.get(target) ?? 0) + 1);
  }
  const inForce = [...byId.keys()].filter((id) => !open.has(id));
  const takenBack = new Set<string>();
  for (let id = inForce.pop(); id !== undefined; id = inForce.pop()) {
    const target = byId.get(id)?.target;
    if (target === undefined || !byId.has(target) || takenBack.has(target)) continue;
    takenBack.add(target);
    // An erasure that has lost its force no longer counts against what it was to erase.
    const next = byId.get(target)?.target;
    if (next === undefined || !open.has(next)) continue;
    const left = (open.get(next) ?? 0) - 1;
    open.set(next, left);
    if (left === 0 && !takenBack.has(next)) inForce.push(next);
  }
  return takenBack;
}

/** The records of a pan without the erased ones. The marks and the end of an erased round go with it. */
export function withoutErased(records: PanRecords): PanRecords {
  const erased = erasedIds(records.erasures);
  if (erased.size === 0) return records;
  const isThere = isThereIn(erased);
  return {
    pan: records.pan,
    edits: records.edits.filter(isThere),
    rounds: records.rounds.filter(isThere),
    ends: records.ends.filter(isThere),
    marks: records.marks.filter(isThere),
    blows: records.blows.filter(isThere),
    knockChecks: records.knockChecks.filter(isThere),
    stopgaps: records.stopgaps.filter(isThere),
    visits: records.visits.filter(isThere),
    erasures: records.erasures.filter(isThere),
  };
}

/** Readings without the erased ones and without those of erased rounds. */
export function readingsWithoutErased(
  readings: readonly ReadingRecord[],
  erasures: readonly Erasure[],
): readonly ReadingRecord[] {
  const erased = erasedIds(erasures);
  return erased.size === 0 ? readings : readings.filter(isThereIn(erased));
}

const isThereIn =
  (erased: ReadonlySet<string>) =>
  ({ id, round }: { readonly id: RecordId; readonly round?: RoundId | null }): boolean =>
    !erased.has(id) && !(round && erased.has(round));
