// How every note of a pan stands now, wherever it was measured last. A round stays a document of its day (`resultOf`);
// whatever speaks of the pan as it is asks here.

import { keptReading } from '../reading/kept-reading';
import {
  type Blows,
  type PanRecords,
  type ReadingRecord,
  type RoundStart,
  roundOf,
} from '../records/rack-records';
import { isBefore, olderFirst } from '../records/record-order';
import { currentPan } from '../records/standing/current-pan';
import { markKinds } from '../records/standing/standing-marks';
import { readingsWithoutErased, withoutErased } from '../records/standing/without-erased';
import { standardA4 } from '../tuning/equal-temperament';
import { cents, type Hertz, type MidiNote } from '../tuning/units';
import { newestFinishedRounds } from './finished-rounds';
import { type JudgedPan, type Judging, judgedPan, type NoteResult } from './judged-pan';
import { type RoundHead, roundHead } from './round-result';

/** `bench`: outside a round, on the bench or in a check after work. */
export type TakenIn = 'round' | 'bench';

/**
 * What work did to what is known of a note since the round.
 * `measured`: it was worked on, and measured again after the last blows.
 * `not-measured`: blows have fallen since its newest reading that counts, so that it may stand otherwise by now.
 */
export type WorkSince = 'none' | 'measured' | 'not-measured';

export interface NoteNow extends NoteResult {
  /** Where its reading was taken; null: it has none. */
  readonly takenIn: TakenIn | null;
  readonly work: WorkSince;
}

export interface PanNow extends JudgedPan<NoteNow> {
  /** The round that it builds on, or null before the first. */
  readonly base: RoundHead | null;
  /** The readings that count, one a note. */
  readonly counting: readonly ReadingRecord[];
}

/**
 * The pan as it stands now. It builds on the round `start`, usually the newest finished one of many notes (`baseRound`),
 * or on none. A note's newest reading since that round began holds, in that round, a later one or outside of rounds; one
 * that has not settled (`isKnown`) holds only in a round, and only where nothing better is there. Marks are those that hold
 * now. `readings` may hold others, and erased ones; they do not count.
 */
export function panNow(
  start: RoundStart | null,
  readings: readonly ReadingRecord[],
  records: PanRecords,
  { a4, ...judging }: Judging & { readonly a4: Hertz },
): PanNow {
  const { fields } = currentPan(records);
  const valid = readingsWithoutErased(readings, records.erasures);
  const counting = countingReadings(start, valid, records);
  const quick = new Set(records.rounds.filter(({ way }) => way === 'quick').map(roundOf));
  const pan = judgedPan(
    {
      readings: counting,
      marks: markKinds(records),
      layout: fields.layout,
      a4: fields.a4 ?? a4,
      isQuick: ({ round }) => round !== null && quick.has(round),
    },
    judging,
  );
  const blows = withoutErased(records).blows.filter(
    (each) => start === null || !isBefore(each, start),
  );
  const notes = new Map(
    pan.notes.map((result): readonly [MidiNote, NoteNow] => {
      const reading = counting.get(result.note) ?? null;
      const takenIn = reading && (reading.round === null ? 'bench' : 'round');
      const sets = blows.filter(({ note }) => note === result.note);
      return [result.note, { ...result, takenIn, work: workSince(reading, sets) }];
    }),
  );
  return {
    ...pan,
    base: start && roundHead(start),
    counting: [...counting.values()],
    notes: [...notes.values()],
    worst: pan.worst.flatMap(({ note }) => notes.get(note) ?? []),
  };
}

/** The same in the form of a `RoundResult`, dated by the round. */
export interface DatedPanNow extends RoundHead, PanNow {}

/** Null before the first round. */
export const resultNow = (now: PanNow): DatedPanNow | null => now.base && { ...now, ...now.base };

function countingReadings(
  start: RoundStart | null,
  readings: readonly ReadingRecord[],
  records: PanRecords,
): ReadonlyMap<MidiNote, ReadingRecord> {
  const later = newestFinishedRounds(records, Number.POSITIVE_INFINITY).filter(
    (each) => start !== null && isBefore(start, each),
  );
  const rounds = new Set([...later, ...(start ? [start] : [])].map(roundOf));
  const byNote = new Map<MidiNote, ReadingRecord[]>();
  for (const reading of [...readings].sort((one, other) => olderFirst(other, one))) {
    const isSince = start === null || !isBefore(reading, start);
    if (reading.round === null ? isSince : rounds.has(reading.round)) {
      byNote.set(reading.note, [...(byNote.get(reading.note) ?? []), reading]);
    }
  }
  return new Map(
    [...byNote].flatMap(([note, newestFirst]) => {
      const holds = newestFirst.find(isKnown) ?? newestFirst.find((each) => each.round !== null);
      return holds ? [[note, holds] as const] : [];
    }),
  );
}

/** Settled, or known to walk: more strikes would not change what it says. */
function isKnown(record: ReadingRecord): boolean {
  // Any A4 will do: strikes are compared with each other alone.
  const { settled, walking } = keptReading(record, { a4: standardA4, offset: cents(0) });
  return settled || walking !== null;
}

function workSince(reading: ReadingRecord | null, sets: readonly Blows[]): WorkSince {
  if (sets.length === 0) return 'none';
  // A reading that is written again right before blows may have a later turn than the blows, but they name it.
  const isSince = (set: Blows): boolean =>
    reading === null || isBefore(reading, set) || set.before === reading.id;
  return sets.some(isSince) ? 'not-measured' : 'measured';
}
