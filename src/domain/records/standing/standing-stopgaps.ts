// Which stopgaps are on a pan's notes now.
import type { MidiNote } from '../../tuning/units';
import type { PanRecords, Stopgap } from '../rack-records';
import { newestPerNote } from '../record-order';
import { withoutErased } from './without-erased';

/**
 * The newest stopgap of each note that is not erased; notes whose newest one is `none` are not there. Stopgaps
 * made at `until` or later do not count yet.
 */
export function standingStopgaps(
  records: PanRecords,
  until: number = Number.POSITIVE_INFINITY,
): ReadonlyMap<MidiNote, Stopgap> {
  const made = withoutErased(records).stopgaps.filter(({ at }) => at < until);
  return new Map([...newestPerNote(made)].filter(([, { stopgap }]) => stopgap !== 'none'));
}
