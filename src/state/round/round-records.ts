// The records that a round makes.

import {
  type Mark,
  type MarkKind,
  type RefusedBlows,
  type RoundEnd,
  type RoundStart,
  roundOf,
} from '../../domain/records/rack-records';
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
