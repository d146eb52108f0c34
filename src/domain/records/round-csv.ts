// The readings of some rounds of one pan as one table.
import { cents, type Hertz } from '../tuning/units';
import { wishOf } from '../work/judge-note';
import type { PanFields, ReadingRecord, RoundId, RoundStart } from './rack-records';
import { roundOf } from './rack-records';
import { readingCsvRows, readingsCsvHeader } from './readings-csv';
import { olderFirst } from './record-order';

/**
 * The table of all readings of these rounds, older ones first: a note that was read twice in a round is there
 * twice. `a4` is what the cents are against.
 */
export function roundCsv(
  rounds: readonly RoundStart[],
  readings: ReadonlyMap<RoundId, readonly ReadingRecord[]>,
  { name, serial, layout }: Pick<PanFields, 'name' | 'serial' | 'layout'>,
  a4: Hertz,
): string {
  const rows = [...rounds].sort(olderFirst).flatMap((start) =>
    [...(readings.get(roundOf(start)) ?? [])].sort(olderFirst).map((reading) =>
      readingCsvRows({
        reading,
        panName: name,
        serial,
        a4,
        offset: wishOf(layout, reading.note).offset ?? cents(0),
        conditions: start.conditions,
      }),
    ),
  );
  return readingsCsvHeader + rows.join('');
}
