// The sheet of a pan as the app makes it from its records, for tests.

import { knockSigns, type ReadingsByRound } from '../../../src/domain/knock-check/round-signs';
import type {
  PanRecords,
  RackRecord,
  ReadingRecord,
  RoundStart,
} from '../../../src/domain/records/rack-records';
import { panId, roundOf } from '../../../src/domain/records/rack-records';
import { panNow } from '../../../src/domain/rounds/pan-now';
import { resultOf } from '../../../src/domain/rounds/result-of-round';
import { makeSheet, sheetRounds } from '../../../src/domain/sheet/make-sheet';
import type { Sheet } from '../../../src/domain/sheet/sheet';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { hertz, instant } from '../../../src/domain/tuning/units';

const judging = { a4: hertz(440), reference: 'band', limits: usualTolerances } as const;

/** The records of one pan, sorted as the store gives them. */
export function panRecordsOf(records: readonly RackRecord[], pan = 'pan-1'): PanRecords {
  const ofKind = <Kind extends RackRecord['kind']>(kind: Kind) =>
    records.filter(
      (record): record is Extract<RackRecord, { kind: Kind }> =>
        record.kind === kind && record.pan === pan,
    );
  return {
    pan: panId(pan),
    edits: ofKind('pan-edit'),
    rounds: ofKind('round'),
    ends: ofKind('round-end'),
    marks: ofKind('mark'),
    blows: ofKind('blows'),
    knockChecks: ofKind('knock-check'),
    stopgaps: ofKind('stopgap'),
    visits: ofKind('tuner-visit'),
    erasures: ofKind('erasure'),
  };
}

/** The readings of each round among the records. */
export const readingsByRound = (records: readonly RackRecord[]): ReadingsByRound =>
  new Map(
    records.flatMap((start) => {
      if (start.kind !== 'round') return [];
      const round = roundOf(start);
      const ofRound = (record: RackRecord): record is ReadingRecord =>
        record.kind === 'reading' && record.round === round;
      return [[round, records.filter(ofRound)] as const];
    }),
  );

export function sheetSample(records: readonly RackRecord[], contact = ''): Sheet {
  const pan = panRecordsOf(records);
  const readings = records.filter((record): record is ReadingRecord => record.kind === 'reading');
  const rounds = sheetRounds(pan);
  const result = (start: RoundStart | null) => start && resultOf(start, readings, pan, judging);
  const { shown, before } = rounds;
  return makeSheet({
    records: pan,
    rounds,
    standing: panNow(shown, readings, pan, judging),
    before: result(before),
    heard: knockSigns(pan, readingsByRound(records), judging.limits.highestWithPartials),
    judging,
    contact,
    now: instant(Date.UTC(2026, 7, 1, 12)),
  });
}
