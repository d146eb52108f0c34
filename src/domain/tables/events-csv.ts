// What happened to a pan as a table: knock checks with what was seen, stopgaps, marks, blows and tuner's visits.
// A table of its own: a row of the readings is a partial with its Hz and cents, and none of these has any.
import type { KnockSigns } from '../knock-check/round-signs';
import type {
  Blows,
  KnockCheck,
  Mark,
  PanFields,
  PanRecords,
  RackRecord,
  Stopgap,
  TunerVisit,
} from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { withoutErased } from '../records/standing/without-erased';
import { noteName } from '../tuning/note-names';
import type { Instant } from '../tuning/units';
import { csvRow } from './csv-row';
import { localTime } from './local-time';

const columns = [
  'Pan',
  'Serial',
  'Written down at (UTC)',
  'Kind',
  'Note',
  'What',
  'Answer',
  'Blows (count)',
  'Drum',
  'Clock (hours)',
  'Distance from the middle (of the radius)',
  'Happened at (UTC)',
  'Remarks',
  'Record',
  'Written down at (local)',
] as const;

/** The cells of one row that differ from kind to kind. */
interface Event {
  readonly kind: string;
  readonly note?: string;
  readonly what: string;
  readonly answer?: string;
  readonly count?: number | null;
  /** Drum from 1, hour on a clock face, distance from the drum's middle. */
  readonly place?: readonly [drum: number, clock: number, radius: number];
  readonly happenedAt?: string;
  readonly remarks?: string;
}

/**
 * The table of all that happened to a pan, older records first; what was erased is left out. `heard` are the signs of
 * damage after its newest knock, which stand with that knock check; `minutesAhead` says how far local time is ahead of
 * UTC at a moment.
 */
export function eventsCsv(
  records: PanRecords,
  { name, serial }: Pick<PanFields, 'name' | 'serial'>,
  heard: KnockSigns | null = null,
  minutesAhead: (at: Instant) => number = () => 0,
): string {
  const { knockChecks, stopgaps, marks, blows, visits } = withoutErased(records);
  const all: readonly RackRecord[] = [...knockChecks, ...stopgaps, ...marks, ...blows, ...visits];
  const rows = [...all]
    .sort(olderFirst)
    .flatMap((record) =>
      [...eventsOf(record), ...(heard?.check.id === record.id ? signEvents(heard) : [])].map(
        (event) =>
          csvRow([
            name,
            serial,
            new Date(record.at).toISOString(),
            event.kind,
            event.note ?? null,
            event.what,
            event.answer ?? null,
            event.count ?? null,
            ...(event.place ?? [null, null, null]),
            event.happenedAt ?? null,
            event.remarks ?? null,
            record.id,
            localTime(record.at, minutesAhead),
          ]),
      ),
    );
  // A byte order mark tells spreadsheets that the text is UTF-8.
  return `\ufeff${csvRow(columns)}${rows.join('')}`;
}

function eventsOf(record: RackRecord): readonly Event[] {
  switch (record.kind) {
    case 'knock-check':
      return eventsOfCheck(record);
    case 'stopgap':
      return [eventOfStopgap(record)];
    case 'mark':
      return [eventOfMark(record)];
    case 'blows':
      return [eventOfBlows(record)];
    case 'tuner-visit':
      return [eventOfVisit(record)];
    // What a pan is called, and its rounds and readings, are no events of this table.
    case 'pan-edit':
    case 'round':
    case 'round-end':
    case 'reading':
    case 'erasure':
      return [];
  }
}

function eventsOfCheck({ impact, remarks, looks }: KnockCheck): readonly Event[] {
  const where: Partial<Event> =
    impact === null
      ? {}
      : impact.kind === 'note'
        ? { note: noteName(impact.note) }
        : { place: [impact.drum + 1, rounded(impact.clock), rounded(impact.radius)] };
  return [
    { kind: 'knock check', what: impact ? 'place that was hit' : '', remarks, ...where },
    ...looks.map(({ look, answer }): Event => ({ kind: 'look', what: look, answer })),
  ];
}

const signEvents = ({ signs }: KnockSigns): readonly Event[] =>
  [...signs]
    .sort(([one], [other]) => one - other)
    .flatMap(([note, found]) =>
      found.map(
        ({ kind }): Event => ({ kind: 'sign of damage', note: noteName(note), what: kind }),
      ),
    );

const eventOfStopgap = ({ note, stopgap }: Stopgap): Event => ({
  kind: 'stopgap',
  note: noteName(note),
  what: stopgap === 'none' ? 'taken off' : stopgap,
});

const eventOfMark = ({ note, mark }: Mark): Event => ({
  kind: 'mark',
  note: noteName(note),
  what: mark === 'none' ? 'taken back' : mark,
});

const eventOfBlows = ({ note, logged, count }: Blows): Event => ({
  kind: 'blows',
  note: noteName(note),
  what: logged ? [logged.place, logged.side, logged.firmness].join(', ') : 'heard only',
  count,
});

const eventOfVisit = ({ visitedAt, who, done, remarks, startsBaseline }: TunerVisit): Event => ({
  kind: startsBaseline ? 'visit: tuned' : 'visit: looked at, not tuned',
  what: done,
  answer: who,
  happenedAt: new Date(visitedAt).toISOString(),
  remarks,
});

const rounded = (value: number): number => Number(value.toFixed(2));
