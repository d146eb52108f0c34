// The readings of some rounds of one pan as one table.
import type { DamageKind } from '../knock-check/damage-evidence';
import type { KnockSigns } from '../knock-check/round-signs';
import { notesOf, type PanLayout } from '../pans/layout';
import { wishOf } from '../reading/judge-note';
import type { PanFields, ReadingRecord, RoundId, RoundStart } from '../records/rack-records';
import { roundOf } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { cents, type Hertz } from '../tuning/units';
import { readingCsvRows, readingsCsvHeader } from './readings-csv';

/**
 * The table of all readings of these rounds, older ones first: a note that was read twice in a round is there
 * twice. `a4` is what the cents are against, `heard` are the signs of damage after the newest knock.
 */
export function roundCsv(
  rounds: readonly RoundStart[],
  readings: ReadonlyMap<RoundId, readonly ReadingRecord[]>,
  { name, serial, layout }: Pick<PanFields, 'name' | 'serial' | 'layout'>,
  a4: Hertz,
  heard: KnockSigns | null = null,
): string {
  const rows = [...rounds].sort(olderFirst).flatMap((start) => {
    const taken = [...(readings.get(roundOf(start)) ?? [])].sort(olderFirst);
    return taken.map((reading) =>
      readingCsvRows({
        reading,
        panName: name,
        serial,
        a4,
        offset: wishOf(layout, reading.note).offset ?? cents(0),
        conditions: start.conditions,
        signs: signsOf(reading, taken, layout, heard),
      }),
    );
  });
  return readingsCsvHeader + rows.join('');
}

/** The signs are those of the newest reading of each note in the soft round. */
function signsOf(
  { id, note, round }: ReadingRecord,
  taken: readonly ReadingRecord[],
  layout: PanLayout,
  heard: KnockSigns | null,
): readonly DamageKind[] | null {
  if (!heard || heard.round !== round || !notesOf(layout).includes(note)) return null;
  if (taken.findLast((each) => each.note === note)?.id !== id) return null;
  return (heard.signs.get(note) ?? []).map(({ kind }) => kind);
}
