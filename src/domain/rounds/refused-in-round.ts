// What a round's records tell about blows that became no strike.

import type { Mark, ReadingRecord, RefusedBlows, RoundId } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import type { MidiNote } from '../tuning/units';

/**
 * The refused blows of each note in a round: those of its newest reading, with those before the marks that came after
 * it. Notes without any are left out. Erased records are to be left out beforehand.
 */
export function refusedInRound(
  round: RoundId,
  readings: readonly ReadingRecord[],
  marks: readonly Mark[],
): ReadonlyMap<MidiNote, RefusedBlows> {
  const found = new Map<MidiNote, RefusedBlows>();
  const records = [...readings, ...marks].filter((record) => record.round === round);
  for (const record of records.sort(olderFirst)) {
    if (record.kind === 'reading') found.delete(record.note);
    if (record.refused) found.set(record.note, sumOf(found.get(record.note), record.refused));
  }
  return found;
}

const sumOf = (before: RefusedBlows | undefined, more: RefusedBlows): RefusedBlows => ({
  knocks: (before?.knocks ?? 0) + more.knocks,
  heardAsSeveral: (before?.heardAsSeveral ?? 0) + more.heardAsSeveral,
});
