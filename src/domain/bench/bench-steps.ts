// The steps of a note on the bench, from what is kept, and the records that a step makes.

import { keptReading } from '../reading/kept-reading';
import type { ReadingAim } from '../reading/reading-values';
import type { Blows, ReadingRecord, RecordId } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import type { Instant, MidiNote } from '../tuning/units';
import type { BenchStep } from './bench-course';

/** A bench reopened within this time goes on where it was: a working day (own choice), ms. */
export const benchLasts = 12 * 3600 * 1000;

/**
 * The steps of a note since `from`, oldest first: its readings outside of rounds and its sets of blows, erased ones
 * taken out. A set takes its place from the reading that came after it; one without is the open end.
 */
export function benchStepsOf(
  note: MidiNote,
  readings: readonly ReadingRecord[],
  blows: readonly Blows[],
  aim: ReadingAim,
  from: Instant,
): readonly BenchStep[] {
  const own = readings
    .filter((each) => each.note === note && each.round === null && each.at >= from)
    .sort(olderFirst);
  const sets = blows.filter((each) => each.note === note && each.at >= from).sort(olderFirst);
  const byAfter = new Map<RecordId | null, Blows>(sets.map((set) => [set.after, set]));
  const steps = own.map((record): BenchStep => {
    const set = byAfter.get(record.id);
    return {
      blows: set ? { at: set.at, count: set.count, logged: set.logged } : null,
      reading: keptReading(record, aim),
      kept: { reading: record.id, blows: set?.id ?? null, isAll: true },
    };
  });
  const open = sets.findLast((set) => set.after === null);
  const newest = own.at(-1);
  if (!open || !newest || open.before !== newest.id) return steps;
  const { at, count, logged } = open;
  return [
    ...steps,
    {
      blows: { at, count, logged },
      reading: null,
      kept: { reading: null, blows: open.id, isAll: true },
    },
  ];
}
