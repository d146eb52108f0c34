// The readings of some rounds of one pan as one table.
import type { DamageKind } from '../knock-check/damage-evidence';
import type { KnockSigns } from '../knock-check/round-signs';
import { notesOf, type PanLayout } from '../pans/layout';
import { wishOf } from '../reading/judge-note';
import type { NoteStanding } from '../reading/note-standing';
import type { PanFields, ReadingRecord, RoundId, RoundStart } from '../records/rack-records';
import { roundOf } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import type { RoundResult } from '../rounds/round-result';
import { cents, type Hertz, type Instant, type MidiNote } from '../tuning/units';
import { readingCsvRows, readingsCsvHeader } from './readings-csv';

/** What the table says beside the readings. */
export interface BesideReadings {
  /** The signs of damage after the newest knock. */
  readonly heard?: KnockSigns | null;
  /** How each note stood in each round. */
  readonly states?: ReadonlyMap<RoundId, ReadonlyMap<MidiNote, NoteStanding>>;
  /** Minutes that local time is ahead of UTC at a moment. */
  readonly minutesAhead?: (at: Instant) => number;
}

/** How each note stood in these rounds, for the table. */
export const statesOf = (
  results: Iterable<RoundResult>,
): ReadonlyMap<RoundId, ReadonlyMap<MidiNote, NoteStanding>> =>
  new Map(
    [...results].map(({ round, notes }) => [
      round,
      new Map(notes.map(({ note, standing }) => [note, standing])),
    ]),
  );

/**
 * The table of all readings of these rounds, older ones first: a note that was read twice in a round is there
 * twice. `a4` is what the cents are against.
 */
export function roundCsv(
  rounds: readonly RoundStart[],
  readings: ReadonlyMap<RoundId, readonly ReadingRecord[]>,
  { name, serial, layout }: Pick<PanFields, 'name' | 'serial' | 'layout'>,
  a4: Hertz,
  { heard = null, states = new Map(), minutesAhead = () => 0 }: BesideReadings = {},
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
        round: { at: start.at, way: start.way },
        state: newestOfNote(taken, reading)
          ? (states.get(roundOf(start))?.get(reading.note) ?? null)
          : null,
        minutesAhead,
        signs: signsOf(reading, taken, layout, heard),
      }),
    );
  });
  return readingsCsvHeader + rows.join('');
}

/** Of two readings of a note in one round, the newer one counts. */
const newestOfNote = (
  taken: readonly ReadingRecord[],
  { id, note }: Pick<ReadingRecord, 'id' | 'note'>,
): boolean => taken.findLast((each) => each.note === note)?.id === id;

/** The signs are those of the newest reading of each note in the soft round. */
function signsOf(
  { id, note, round }: ReadingRecord,
  taken: readonly ReadingRecord[],
  layout: PanLayout,
  heard: KnockSigns | null,
): readonly DamageKind[] | null {
  if (!heard || heard.round !== round || !notesOf(layout).includes(note)) return null;
  if (!newestOfNote(taken, { id, note })) return null;
  return (heard.signs.get(note) ?? []).map(({ kind }) => kind);
}
