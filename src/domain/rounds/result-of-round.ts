import {
  type PanRecords,
  type ReadingRecord,
  type RoundStart,
  roundOf,
} from '../records/rack-records';
import { isBefore } from '../records/record-order';
import { currentPan } from '../records/standing/current-pan';
import { markKinds } from '../records/standing/standing-marks';
import type { Hertz } from '../tuning/units';
import { newestFinishedRounds } from './finished-rounds';
import type { Judging } from './judged-pan';
import { type RoundResult, roundResult } from './round-result';

/**
 * The result of one round of a pan with the layout and the pitch that hold today, and with the marks that held
 * until the next round: a note that has died since was not dead then.
 */
export function resultOf(
  start: RoundStart,
  readings: readonly ReadingRecord[],
  records: PanRecords,
  { a4, ...judging }: Judging & { readonly a4: Hertz },
): RoundResult {
  const { fields } = currentPan(records);
  const round = roundOf(start);
  const next = newestFinishedRounds(records, Number.POSITIVE_INFINITY).findLast((each) =>
    isBefore(start, each),
  );
  return roundResult(
    {
      start,
      readings: readings.filter((reading) => reading.round === round),
      marks: markKinds(records, next),
      layout: fields.layout,
      a4: fields.a4 ?? a4,
    },
    judging,
  );
}
