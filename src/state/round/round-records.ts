// The records that a round makes.

import type { Reading } from '../../domain/reading/reading';
import {
  type Mark,
  type MarkKind,
  type ReadingRecord,
  type RefusedBlows,
  type RoundEnd,
  type RoundStart,
  roundOf,
  type Taking,
} from '../../domain/records/rack-records';
import { strikeRecordOf } from '../../domain/records/strike-record';
import type { MidiNote } from '../../domain/tuning/units';
import type { NewHead } from '../keeping/new-head';

export const endRecord = (
  start: RoundStart,
  ending: RoundEnd['ending'],
  head: NewHead,
): RoundEnd => ({ ...head, kind: 'round-end', round: roundOf(start), ending });

interface Marked {
  readonly note: MidiNote;
  readonly mark: MarkKind;
  /** Blows on it that became no strike. */
  readonly refused: RefusedBlows | null;
}

export const markRecord = (
  start: RoundStart,
  { note, mark, refused }: Marked,
  head: NewHead,
): Mark => ({
  ...head,
  kind: 'mark',
  round: roundOf(start),
  note,
  mark,
  ...(refused ? { refused } : {}),
});

interface Taken {
  readonly reading: Reading;
  readonly taking: Taking;
  /** Blows on the note that became no strike. */
  readonly refused: RefusedBlows | null;
}

export const readingRecord = (
  start: RoundStart,
  { reading: { note, heard }, taking, refused }: Taken,
  head: NewHead,
): ReadingRecord => ({
  ...head,
  kind: 'reading',
  round: roundOf(start),
  note,
  strikes: heard.map(strikeRecordOf),
  taking,
  ...(refused ? { refused } : {}),
  sound: null,
});
