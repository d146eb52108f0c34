// What work on one note did to the others: those that share a border with it and those that ring with it.

import type { DisturbedNote } from '../advice/disturbed-notes';
import type { PanLayout } from '../pans/layout';
import { keptReading } from '../reading/kept-reading';
import type { Reading } from '../reading/reading';
import type { ReadingRecord } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { cents, type Hertz, type Instant } from '../tuning/units';
import type { BenchCourse } from './bench-course';
import { changesBetween, type PartialChange } from './bench-course';
import { recheckList } from './work-order';

export interface NoteCheck {
  readonly disturbed: DisturbedNote;
  /** The newest reading from before the work, or null where there was none. */
  readonly before: Reading | null;
  /** The newest one from after the last blows; null: still to be measured. */
  readonly now: Reading | null;
  /** How its partials moved; empty without both readings. */
  readonly changes: readonly PartialChange[];
}

/** The notes to be measured again, the likeliest to have moved first; empty before the first blows. */
export function checksAfter(
  layout: PanLayout,
  { note, steps }: BenchCourse,
  readings: readonly ReadingRecord[],
  a4: Hertz,
): readonly NoteCheck[] {
  const times = steps.flatMap(({ blows }) => blows?.at ?? []);
  const [first] = times;
  const last = times.at(-1);
  if (first === undefined || last === undefined) return [];
  const sorted = [...readings].sort(olderFirst);
  return recheckList(layout, note).map((disturbed): NoteCheck => {
    const own = sorted.filter((each) => each.note === disturbed.note);
    const before = readingOf(own.findLast(isBefore(first)), a4);
    const now = readingOf(
      own.findLast((each) => !isBefore(last)(each)),
      a4,
    );
    return { disturbed, before, now, changes: before && now ? changesBetween(before, now) : [] };
  });
}

const isBefore =
  (time: Instant) =>
  ({ at }: ReadingRecord): boolean =>
    at < time;

const readingOf = (record: ReadingRecord | undefined, a4: Hertz): Reading | null =>
  record ? keptReading(record, { a4, offset: cents(0) }) : null;
