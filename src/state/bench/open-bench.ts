// A note on the bench, and what is known around it.

import type { BenchCourse } from '../../domain/bench/bench-course';
import { checksAfter, type NoteCheck } from '../../domain/bench/checks-after';
import type { PanLayout } from '../../domain/pans/layout';
import type { PracticeSource } from '../../domain/ports/sound-ports';
import type { Blows, MarkKind, PanId, ReadingRecord } from '../../domain/records/rack-records';
import type { Cents, Hertz, Instant, MidiNote } from '../../domain/tuning/units';

/** What is put on the bench. */
export type BenchSubject =
  | { readonly kind: 'pan'; readonly pan: PanId; readonly note: MidiNote }
  /** A note without a pan: nothing is kept. */
  | { readonly kind: 'bare'; readonly note: MidiNote }
  /** A note of a simulated pan: its strikes come from `source`, and nothing is kept. */
  | { readonly kind: 'practice'; readonly source: PracticeSource; readonly note: MidiNote };

export interface BenchSurroundings {
  /** Name of the pan, empty without one. */
  readonly name: string;
  readonly layout: PanLayout | null;
  readonly a4: Hertz;
  /** What fundamentals are judged against, cents from the band's pitch. */
  readonly reference: Cents;
  readonly marks: ReadonlyMap<MidiNote, MarkKind>;
  /** Valid readings of the newest round, of this note and of all that tell what blows do, in any order. */
  readonly readings: readonly ReadingRecord[];
  readonly blows: readonly Blows[];
}

export interface OpenBench {
  readonly subject: BenchSubject;
  readonly around: BenchSurroundings;
  readonly course: BenchCourse;
  /** Another note that is measured again meanwhile. */
  readonly check: BenchCourse | null;
}

/** The note that is listened for. */
export const noteHeard = (bench: OpenBench): MidiNote => courseOf(bench).note;

/** The course of what is being measured: of the note that is measured again, else of the note of the bench. */
export const courseOf = ({ check, course }: OpenBench): BenchCourse => check ?? course;

export const withCourse = (bench: OpenBench, course: BenchCourse): OpenBench =>
  bench.check ? { ...bench, check: course } : { ...bench, course };

/** `none` takes the mark of the note away. */
export function withMark(bench: OpenBench, mark: MarkKind): OpenBench {
  const marks = new Map(bench.around.marks);
  if (mark === 'none') marks.delete(bench.course.note);
  else marks.set(bench.course.note, mark);
  return { ...bench, around: { ...bench.around, marks } };
}

/** The notes that the work may have moved, and what it did to them; none before the first blows. */
export const checksOf = ({ course, around }: OpenBench): readonly NoteCheck[] =>
  around.layout === null ? [] : checksAfter(around.layout, course, around.readings, around.a4);

/** When the oldest part of a bench was made that is opened again. */
export const since = (now: Instant, lasts: number): Instant => (now - lasts) as Instant;
