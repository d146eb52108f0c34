// What is marked about a pan's notes now.
import type { MidiNote } from '../../tuning/units';
import type { Mark, MarkKind, PanRecords } from '../rack-records';
import { olderFirst } from '../record-order';
import { withoutErased } from './without-erased';

/**
 * The newest mark of each note that is not erased; notes whose newest mark is `none` are not there. Marks made at
 * `until` or later do not count yet.
 */
export function standingMarks(
  records: PanRecords,
  until: number = Number.POSITIVE_INFINITY,
): ReadonlyMap<MidiNote, Mark> {
  const standing = new Map<MidiNote, Mark>();
  for (const mark of [...withoutErased(records).marks].sort(olderFirst)) {
    if (mark.at >= until) continue;
    if (mark.mark === 'none') standing.delete(mark.note);
    else standing.set(mark.note, mark);
  }
  return standing;
}

/** The kind of each standing mark by note; `until` as above. */
export const markKinds = (records: PanRecords, until?: number): ReadonlyMap<MidiNote, MarkKind> =>
  new Map([...standingMarks(records, until)].map(([note, { mark }]) => [note, mark]));
