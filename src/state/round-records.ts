// The records that a round makes.
import {
  type Mark,
  type MarkKind,
  type ReadingRecord,
  type RoundEnd,
  type RoundStart,
  roundOf,
  type Taking,
} from '../domain/records/rack-records';
import { strikeRecordOf } from '../domain/records/strike-record';
import type { MidiNote } from '../domain/tuning/units';
import type { Reading } from '../domain/work/reading';
import type { NewHead } from './new-head';

export const endRecord = (
  start: RoundStart,
  ending: RoundEnd['ending'],
  head: NewHead,
): RoundEnd => ({ ...head, kind: 'round-end', round: roundOf(start), ending });

export const markRecord = (
  start: RoundStart,
  note: MidiNote,
  mark: MarkKind,
  head: NewHead,
): Mark => ({ ...head, kind: 'mark', round: roundOf(start), note, mark });

export const readingRecord = (
  start: RoundStart,
  { note, heard }: Reading,
  taking: Taking,
  head: NewHead,
): ReadingRecord => ({
  ...head,
  kind: 'reading',
  round: roundOf(start),
  note,
  strikes: heard.map(strikeRecordOf),
  taking,
  sound: null,
});
