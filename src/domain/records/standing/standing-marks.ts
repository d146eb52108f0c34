// What is marked about a pan's notes now.
import type { MidiNote } from '../../tuning/units';
import type { Mark, MarkKind, PanRecords } from '../rack-records';
import { type InTurn, isBefore, newestPerNote } from '../record-order';
import { withoutErased } from './without-erased';

/**
 * The newest mark of each note that is not erased; notes whose newest mark is `none` are not there. Marks made
 * together with `until` or later do not count yet.
 */
export function standingMarks(
  records: PanRecords,
  until: InTurn | null = null,
): ReadonlyMap<MidiNote, Mark> {
  const made = withoutErased(records).marks.filter(
    (each) => until === null || isBefore(each, until),
  );
  return new Map([...newestPerNote(made)].filter(([, { mark }]) => mark !== 'none'));
}

/** The kind of each standing mark by note; `until` as above. */
export const markKinds = (
  records: PanRecords,
  until: InTurn | null = null,
): ReadonlyMap<MidiNote, MarkKind> =>
  new Map([...standingMarks(records, until)].map(([note, { mark }]) => [note, mark]));
