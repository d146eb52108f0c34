// Readings as a table for spreadsheets and other programs: one row per partial, the units in the header.
import type { DamageKind } from '../knock-check/damage-evidence';
import { meanBuzz } from '../measurement/mean-buzz';
import type { RivalLine } from '../reading/matched-lines';
import type { NoteStanding } from '../reading/note-standing';
import { readingValues } from '../reading/reading-values';
import type { ReadingPartial } from '../reading/summarise';
import type { ReadingRecord, RoundConditions, RoundWay } from '../records/rack-records';
import { targetOf } from '../records/strike-record';
import { noteName } from '../tuning/note-names';
import { type Cents, type Hertz, type Instant, shiftedBy } from '../tuning/units';
import { csvRow } from './csv-row';
import { localTime } from './local-time';

/** A reading with what the table says beside it. */
export interface ListedReading {
  readonly reading: ReadingRecord;
  readonly panName: string;
  readonly serial: string;
  /** What the cents are against. */
  readonly a4: Hertz;
  readonly offset: Cents;
  /** Of its round, or null for a reading outside a round. */
  readonly conditions: RoundConditions | null;
  /** When its round was begun and of which kind it was; null for a reading outside a round. */
  readonly round: { readonly at: Instant; readonly way: RoundWay } | null;
  /** How the note stood by it (`judgedPan`), or null where that was not judged. */
  readonly state: NoteStanding | null;
  /** Minutes that local time is ahead of UTC at a moment: the zone is the phone's. */
  readonly minutesAhead: (at: Instant) => number;
  /** The signs of damage that it showed; null where it was not asked for any. */
  readonly signs: readonly DamageKind[] | null;
}

const columns = [
  'Pan',
  'Serial',
  'Taken at (UTC)',
  'Note',
  'Partial',
  'Times the fundamental',
  'Frequency (Hz)',
  'Against target (cents)',
  'Against own fundamental (cents)',
  'Standard error (cents)',
  'Target (Hz)',
  'A4 (Hz)',
  'Strikes',
  'Inferred',
  'Buzz (dB)',
  'Signs of damage',
  'Air temperature (°C)',
  'Pan stood',
  'Source',
  'Reading',
  // Newer columns come last, so that whoever counts columns finds the older ones where they were.
  'State',
  'Kind of round',
  'Round begun at (local)',
  'Taken at (local)',
] as const;

/** First row of the table. A byte order mark before it tells spreadsheets that the text is UTF-8. */
export const readingsCsvHeader: string = `\ufeff${csvRow(columns)}`;

/** The rows of one (valid) reading, lowest partial first, each ended by CRLF. */
export function readingCsvRows(listed: ListedReading): string {
  const { reading, a4, offset, round, minutesAhead } = listed;
  const target = targetOf({ note: reading.note, a4, offset });
  const { fundamental, fundamentalRival, isInferred, octave, octaveRival, third, thirdRival } =
    readingValues(reading, {
      a4,
      offset,
    });
  const buzz = meanBuzz(reading.strikes);
  const row = ({ name, order, against, own, sigma }: Row): string =>
    csvRow([
      listed.panName,
      listed.serial,
      new Date(reading.at).toISOString(),
      noteName(reading.note),
      name,
      order,
      rounded(shiftedBy(order * target, against), 4),
      rounded(against, 3),
      own === null ? null : rounded(own, 3),
      rounded(sigma, 3),
      rounded(order * target, 4),
      a4,
      reading.strikes.length,
      isInferred && order === 1 ? 'yes' : 'no',
      order === 1 && buzz !== null ? rounded(buzz, 1) : null,
      order === 1 && listed.signs ? listed.signs.join('; ') || 'none' : null,
      listed.conditions?.temperature ?? null,
      listed.conditions?.standing ?? null,
      reading.taking.source,
      reading.id,
      listed.state,
      round?.way ?? null,
      round && localTime(round.at, minutesAhead),
      localTime(reading.at, minutesAhead),
    ]);
  const first: Row = {
    name: 'fundamental',
    order: 1,
    against: fundamental.cents,
    own: null,
    sigma: fundamental.sigmaCents,
  };
  return [
    row(first),
    fundamentalRival ? row(second('second line at the fundamental', 1, fundamentalRival)) : '',
    octave ? row(upper('octave', 2, octave)) : '',
    octaveRival ? row(upper('second line at the octave', 2, octaveRival)) : '',
    third?.kind === 'twelfth' ? row(upper('twelfth', 3, third)) : '',
    third?.kind === 'double-octave' ? row(upper('double octave', 4, third)) : '',
    third && thirdRival
      ? row(
          second('second line at the third partial', third.kind === 'twelfth' ? 3 : 4, thirdRival),
        )
      : '',
  ].join('');
}

interface Row {
  readonly name: string;
  readonly order: number;
  readonly against: Cents;
  readonly own: Cents | null;
  readonly sigma: Cents;
}

const second = (name: string, order: number, line: RivalLine): Row => ({
  name,
  order,
  against: line.cents,
  own: null,
  sigma: line.sigmaCents,
});

const upper = (name: string, order: number, partial: ReadingPartial): Row => ({
  name,
  order,
  against: partial.cents,
  own: partial.centsFromOwn,
  sigma: partial.sigmaCents,
});

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));
