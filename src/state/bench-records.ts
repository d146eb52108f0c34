// The records that a step of the bench makes. A step that grows is written anew, and what it replaces is erased.
import type {
  Blows,
  Erasure,
  PanId,
  ReadingRecord,
  RecordId,
  Taking,
} from '../domain/records/rack-records';
import { strikeRecordOf } from '../domain/records/strike-record';
import type { Instant, MidiNote } from '../domain/tuning/units';
import { type BenchCourse, type KeptStep, newestStep } from '../domain/work/bench-course';
import type { Reading } from '../domain/work/reading';

export interface RecordMaking {
  readonly pan: PanId;
  readonly newId: () => RecordId;
  readonly now: Instant;
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
  const head = (at: Instant) => ({
    shape: 1 as const,
    id: making.newId(),
    pan: making.pan,
    at,
  });
  const reading =
    step.reading && readingRecord(course.note, step.reading, head(making.now), making);
  const before = course.steps.slice(0, -1).findLast((each) => each.kept.reading !== null);
  const blows: Blows | null = step.blows && {
    ...head(step.blows.at),
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
    erasures: replaced.map((target) => ({ ...head(making.now), kind: 'erasure', target })),
    kept: { reading: reading?.id ?? null, blows: blows?.id ?? null },
  };
}

function readingRecord(
  note: MidiNote,
  { heard }: Reading,
  head: Pick<ReadingRecord, 'shape' | 'id' | 'pan' | 'at'>,
  { taking }: RecordMaking,
): ReadingRecord | null {
  const settled = heard.filter((strike) => !strike.provisional);
  if (settled.length === 0) return null;
  return {
    ...head,
    kind: 'reading',
    round: null,
    note,
    strikes: settled.map(strikeRecordOf),
    taking,
    sound: null,
  };
}
