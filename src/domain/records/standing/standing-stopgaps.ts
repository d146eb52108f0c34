// Which stopgaps are on a pan's notes now.
import type { MidiNote } from '../../tuning/units';
import type { PanRecords, Stopgap } from '../rack-records';
import { type InTurn, isBefore, newestPerNote } from '../record-order';
import { withoutErased } from './without-erased';

/**
 * The newest stopgap of each note that is not erased; notes whose newest one is `none` are not there. Stopgaps
 * made together with `until` or later do not count yet.
 */
export function standingStopgaps(
  records: PanRecords,
  until: InTurn | null = null,
): ReadonlyMap<MidiNote, Stopgap> {
  const made = withoutErased(records).stopgaps.filter(
    (each) => until === null || isBefore(each, until),
  );
  return new Map([...newestPerNote(made)].filter(([, { stopgap }]) => stopgap !== 'none'));
}
