// The records that a step of the bench makes. A step that grows is written anew, and what it replaces is erased.

import { type BenchCourse, type KeptStep, newestStep } from '../../domain/bench/bench-course';
import type { Reading } from '../../domain/reading/reading';
import type { Blows, Erasure, ReadingRecord, Taking } from '../../domain/records/rack-records';
import type { NewHead } from '../keeping/new-head';
import { readingRecord } from '../keeping/reading-record';

export interface RecordMaking {
  readonly newHead: () => NewHead;
  readonly taking: Taking;
}

export interface StepRecords {
  readonly reading: ReadingRecord | null;
  readonly blows: Blows | null;
  readonly erasures: readonly Erasure[];
  readonly kept: Omit<KeptStep, 'isAll'>;
}

/** What is to be kept of the newest step, or null if it is kept already or holds nothing. */
export function recordsOfNewest(course: BenchCourse, making: RecordMaking): StepRecords | null {
  const step = newestStep(course);
  if (step.kept.isAll) return null;
  // The blows fell before the reading: they come first in the order.
  const headOfBlows = step.blows && making.newHead();
  const reading = step.reading && settledRecord(step.reading, making);
  const before = course.steps.slice(0, -1).findLast((each) => each.kept.reading !== null);
  const blows: Blows | null = step.blows &&
    headOfBlows && {
      ...headOfBlows,
      at: step.blows.at,
      kind: 'blows',
      round: null,
      note: course.note,
      logged: step.blows.logged,
      count: step.blows.count,
      before: before?.kept.reading ?? null,
      after: reading?.id ?? null,
    };
  const replaced = [step.kept.reading, step.kept.blows].filter((id) => id !== null);
  return {
    reading,
    blows,
    erasures: replaced.map((target) => ({ ...making.newHead(), kind: 'erasure', target })),
    kept: { reading: reading?.id ?? null, blows: blows?.id ?? null },
  };
}

/** The settled strikes as a record; null without any. */
function settledRecord(
  { note, heard }: Reading,
  { newHead, taking }: RecordMaking,
): ReadingRecord | null {
  const strikes = heard.filter((strike) => !strike.provisional);
  if (strikes.length === 0) return null;
  return readingRecord({ round: null, note, strikes, taking, refused: null }, newHead());
}
