// What happened to one note on the bench, in order: strikes that make readings, and the sets of blows between them.

import { changeBetween } from '../advice/blow-sets';
import { type PartialIndex, partialIndices } from '../numbers/three-partials';
import type { Reading } from '../reading/reading';
import type { LoggedBlows, RecordId } from '../records/rack-records';
import type { Instant, MidiNote } from '../tuning/units';

/** A set of blows that was heard or logged. */
export interface BenchBlows {
  /** When the first of them fell. */
  readonly at: Instant;
  /** How many were heard, or null where nobody listened. */
  readonly count: number | null;
  readonly logged: LoggedBlows | null;
}

/** The records in which a step is kept so far. */
export interface KeptStep {
  readonly reading: RecordId | null;
  readonly blows: RecordId | null;
  /** They hold the whole step. */
  readonly isAll: boolean;
}

/** All strikes between two sets of blows. */
export interface BenchStep {
  /** The set that came before it; null at the opening, and where the note moved by itself. */
  readonly blows: BenchBlows | null;
  /** Null until the note has been struck. */
  readonly reading: Reading | null;
  readonly kept: KeptStep;
}

export interface BenchCourse {
  readonly note: MidiNote;
  /** Oldest first; there is always one. */
  readonly steps: readonly BenchStep[];
}

const emptyStep: BenchStep = {
  blows: null,
  reading: null,
  kept: { reading: null, blows: null, isAll: true },
};

/** A course that goes on after the steps of earlier today, or begins. */
export function courseAfter(note: MidiNote, earlier: readonly BenchStep[]): BenchCourse {
  const last = earlier.at(-1);
  // A set without a strike after it is still waiting for its answer.
  const isOpen = last !== undefined && last.reading === null;
  return { note, steps: isOpen ? earlier : [...earlier, emptyStep] };
}

export const newestStep = ({ steps }: BenchCourse): BenchStep => {
  const step = steps.at(-1);
  if (!step) throw new Error('a course has a step');
  return step;
};

/** The newest step with these records, which hold all of it. */
export function stepKept(course: BenchCourse, kept: Omit<KeptStep, 'isAll'>): BenchCourse {
  const step = { ...newestStep(course), kept: { ...kept, isAll: true } };
  return { ...course, steps: [...course.steps.slice(0, -1), step] };
}

function withNewest(
  course: BenchCourse,
  change: Partial<Pick<BenchStep, 'blows' | 'reading'>>,
): BenchCourse {
  const before = newestStep(course);
  const step = { ...before, ...change, kept: { ...before.kept, isAll: false } };
  return { ...course, steps: [...course.steps.slice(0, -1), step] };
}

const withNew = (course: BenchCourse, blows: BenchBlows | null): BenchCourse => ({
  ...course,
  steps: [
    ...course.steps,
    { ...emptyStep, blows, kept: { ...emptyStep.kept, isAll: blows === null } },
  ],
});

/** True if blows have fallen that no strike has answered yet. */
export function isAwaiting(course: BenchCourse): boolean {
  const { blows, reading } = newestStep(course);
  return blows !== null && reading === null;
}

/** True once the note has been struck: blows before that change nothing we have measured. */
export const isOpened = (course: BenchCourse): boolean => openingReading(course) !== null;

/** A blow was heard: it belongs to the set that waits for its strike, or begins one. */
export function blowHeard(course: BenchCourse, at: Instant, count = 1): BenchCourse {
  if (!isOpened(course)) return course;
  const { blows, reading } = newestStep(course);
  if (reading !== null || blows === null) return withNew(course, { at, count, logged: null });
  return withNewest(course, { blows: { ...blows, count: (blows.count ?? 0) + count } });
}

/** Which set a logging would be about: the one that waits, the one before the newest strikes, or one nobody heard. */
export type LoggedSet = 'waiting' | 'answered' | 'unheard';

export function setToLog(course: BenchCourse): LoggedSet {
  if (isAwaiting(course)) return 'waiting';
  const { blows } = newestStep(course);
  return blows !== null && blows.logged === null ? 'answered' : 'unheard';
}

/** Where a set fell was logged, as `setToLog` says; nothing before the first strike. */
export function blowsLogged(course: BenchCourse, at: Instant, logged: LoggedBlows): BenchCourse {
  if (!isOpened(course)) return course;
  const { blows } = newestStep(course);
  if (setToLog(course) === 'unheard' || blows === null) {
    return withNew(course, { at, count: null, logged });
  }
  return withNewest(course, { blows: { ...blows, logged } });
}

/** What was heard last was no hammering: forget the waiting set and go on with the step before it. */
export const noBlows = (course: BenchCourse): BenchCourse =>
  isAwaiting(course) && course.steps.length > 1
    ? { ...course, steps: course.steps.slice(0, -1) }
    : course;

/**
 * The newest strikes make this reading. If it has dropped every strike that agreed before, the note has moved
 * unheard, and a new step begins.
 */
export function readingMade(course: BenchCourse, reading: Reading): BenchCourse {
  const before = newestStep(course).reading;
  const goesOn =
    before === null ||
    before.strikes.some((strike) => reading.heard.some(({ event }) => event === strike.event));
  return withNewest(goesOn ? course : withNew(course, null), { reading });
}

/** The first reading since the bench was opened. */
export const openingReading = ({ steps }: BenchCourse): Reading | null =>
  steps.find(({ reading }) => reading !== null)?.reading ?? null;

export const newestReading = ({ steps }: BenchCourse): Reading | null =>
  steps.findLast(({ reading }) => reading !== null)?.reading ?? null;

/** Sets of blows so far. */
export const setCount = ({ steps }: BenchCourse): number =>
  steps.filter(({ blows }) => blows !== null).length;

/** How one partial moved, cents against its fixed target. */
export interface PartialChange {
  readonly partial: PartialIndex;
  readonly cents: number;
  /** The change is known this well: two standard errors. */
  readonly within: number;
  /** False for a change that is smaller than its uncertainty. */
  readonly isSure: boolean;
}

/** What the newest set that was answered by a strike did, or null. */
export interface BlowsEffect {
  readonly blows: BenchBlows;
  /** The partials that were measured both times. */
  readonly changes: readonly PartialChange[];
  /** The readings right before and after. */
  readonly before: Reading;
  readonly after: Reading;
}

export function effectOfNewest({ steps }: BenchCourse): BlowsEffect | null {
  const at = steps.findLastIndex(({ blows, reading }) => blows !== null && reading !== null);
  const after = steps[at];
  const before = steps.slice(0, Math.max(0, at)).findLast(({ reading }) => reading !== null);
  if (!after?.blows || !before?.reading || !after.reading) return null;
  // Steps after it without blows belong to it: the note was only measured again.
  const last = steps.slice(at).findLast(({ reading }) => reading !== null)?.reading;
  const now = last ?? after.reading;
  const changes = changesBetween(before.reading, now);
  return { blows: after.blows, changes, before: before.reading, after: now };
}

/** An uncertainty is stated as this many standard errors (chosen, no source). */
const stated = 2;

/** How each partial that was measured both times moved; a walking note tells nothing. */
export function changesBetween(before: Reading, after: Reading): readonly PartialChange[] {
  if (before.walking || after.walking) return [];
  const { change, sigma } = changeBetween(before, after);
  return partialIndices.flatMap((partial) => {
    const moved = change[partial];
    if (moved === null) return [];
    const within = stated * sigma[partial];
    return [{ partial, cents: moved, within, isSure: Math.abs(moved) >= within }];
  });
}
