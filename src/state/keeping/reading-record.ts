// The record of a reading, whether a round or the bench took it.
import type { Strike } from '../../domain/measurement/strike';
import type { ReadingRecord } from '../../domain/records/rack-records';
import { strikeRecordOf } from '../../domain/records/strike-record';
import type { NewHead } from './new-head';

export type Taken = Pick<ReadingRecord, 'round' | 'note' | 'taking'> & {
  /** At least one. */
  readonly strikes: readonly Strike[];
  /** Blows on the note that became no strike; null where nobody counted. */
  readonly refused: ReadingRecord['refused'] | null;
};

/** Its sound, if it is kept, is named later: it has an id of its own. */
export const readingRecord = (
  { round, note, taking, strikes, refused }: Taken,
  head: NewHead,
): ReadingRecord => ({
  ...head,
  kind: 'reading',
  round,
  note,
  strikes: strikes.map(strikeRecordOf),
  taking,
  ...(refused ? { refused } : {}),
  sound: null,
});
