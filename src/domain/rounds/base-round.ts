// A round of few notes says little about a pan: how the pan stands builds on the newest round of many.
import { notesOf, type PanLayout } from '../pans/layout';
import { type ReadingRecord, type RoundStart, roundOf } from '../records/rack-records';

/** How many rounds are searched for one of many notes, each of which is read from the disk (own choice). */
export const mostLookedThrough = 5;

/** Fewer than half of the pan's notes were read in it (own choice: then most of the pan would look unheard). */
export function isOfFewNotes(
  start: RoundStart,
  readings: readonly ReadingRecord[],
  layout: PanLayout,
): boolean {
  const notes = new Set(notesOf(layout));
  const round = roundOf(start);
  const read = new Set(
    readings.flatMap((each) => (each.round === round && notes.has(each.note) ? [each.note] : [])),
  );
  return 2 * read.size < notes.size;
}

/** The newest of these rounds, newest first, that is not of few notes; the newest one where all are; null: there is none. */
export const baseRound = (
  rounds: readonly RoundStart[],
  readings: readonly ReadingRecord[],
  layout: PanLayout,
): RoundStart | null =>
  rounds.find((start) => !isOfFewNotes(start, readings, layout)) ?? rounds[0] ?? null;
