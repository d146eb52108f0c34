// A round as it was kept, ready to go on.
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import { strikesOf } from '../../domain/reading/reading-values';
import {
  type PanId,
  type RecordId,
  type RoundId,
  roundOf,
} from '../../domain/records/rack-records';
import { newestPerNote, olderFirst } from '../../domain/records/record-order';
import { currentPan } from '../../domain/records/standing/current-pan';
import { readingsWithoutErased, withoutErased } from '../../domain/records/standing/without-erased';
import { resumeRound } from '../../domain/rounds/resume-round';
import { cents } from '../../domain/tuning/units';
import type { OpenRound } from './open-round';

export type ReadRound =
  | {
      readonly kind: 'read';
      readonly round: OpenRound;
      /** The records it follows from. */
      readonly from: readonly RecordId[];
    }
  /** There is no such round on this phone. */
  | { readonly kind: 'missing' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

/** Reads a round from the rack; strikes of notes that were not done are not kept. */
export async function readRound(
  store: Pick<PanStore, 'pan' | 'readingsOfRound'>,
  pan: PanId,
  round: RoundId,
): Promise<ReadRound> {
  const [records, readings] = await Promise.all([store.pan(pan), store.readingsOfRound(round)]);
  if (records.kind === 'trouble') return records;
  if (readings.kind === 'trouble') return readings;
  const { rounds, ends, marks, knockChecks } = withoutErased(records.value);
  const start = rounds.find((each) => roundOf(each) === round);
  if (!start) return { kind: 'missing' };
  const kept = [...readingsWithoutErased(readings.value, records.value.erasures)].sort(olderFirst);
  const marksOfIt = marks.filter((mark) => mark.round === round);
  const end = ends.filter((each) => each.round === round);
  const aim = { a4: start.a4, offset: cents(0) };
  const progress = resumeRound({
    way: start.way,
    order: start.order,
    readings: kept.map((reading) => ({ note: reading.note, strikes: strikesOf(reading, aim) })),
    // The store gives them in the order of their ids, which is by chance.
    marks: [...newestPerNote(marksOfIt).values()],
  });
  return {
    kind: 'read',
    round: {
      fields: currentPan(records.value).fields,
      start,
      progress,
      kept: progress,
      readings: kept,
      lastDone: null,
      isOver: end.length > 0,
      mayBeChoked: knockChecks.some((check) => check.round === round),
    },
    from: [start, ...kept, ...marksOfIt, ...end].map(({ id }) => id),
  };
}
