// A round that is under way, and how each of its notes stands so far.
import type { PanFields, ReadingRecord, RoundStart } from '../domain/records/rack-records';
import { readingValues } from '../domain/records/reading-values';
import type { ToleranceSet } from '../domain/tuning/tolerances';
import { cents, type MidiNote } from '../domain/tuning/units';
import { judgedNote, wishOf } from '../domain/work/judge-note';
import { type JudgedStanding, standingOf } from '../domain/work/note-standing';
import { nextNote, type RoundProgress } from '../domain/work/round-progress';

export interface OpenRound {
  readonly fields: PanFields;
  readonly start: RoundStart;
  readonly progress: RoundProgress;
  /** The readings kept in this round; the newest of a note counts. */
  readonly readings: readonly ReadingRecord[];
  /** The note that was done last. */
  readonly lastDone: MidiNote | null;
  /** Every note is done, or the user ended it: it has its end record. */
  readonly isOver: boolean;
}

/** How the notes of the round stand: those with a reading or a mark. */
export function standingsOf(
  round: OpenRound,
  limits: ToleranceSet,
): ReadonlyMap<MidiNote, JudgedStanding> {
  const { fields, start, progress, readings } = round;
  const newest = new Map(readings.map((reading) => [reading.note, reading]));
  const standings = new Map<MidiNote, JudgedStanding>();
  for (const [note, { mark }] of progress.notes) {
    const kept = newest.get(note);
    if (!kept && (mark === 'none' || mark === 'skipped')) continue;
    // The offset is taken off where the note is judged.
    const values = kept && readingValues(kept, { a4: start.a4, offset: cents(0) });
    const judged = values ? judgedNote(note, values, wishOf(fields.layout, note)) : null;
    standings.set(note, standingOf({ judged, mark }, limits));
  }
  return standings;
}

/** The note that a mark would go to: the one that is asked for, else the one that was done last. */
export const noteToMark = ({ progress, lastDone }: OpenRound): MidiNote | null =>
  nextNote(progress) ?? lastDone;
