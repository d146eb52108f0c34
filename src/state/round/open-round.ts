// A round that is under way, and how each of its notes stands so far.

import { type JudgedNote, judgedNote, wishOf } from '../../domain/reading/judge-note';
import { keptReading } from '../../domain/reading/kept-reading';
import { type JudgedStanding, standingOf } from '../../domain/reading/note-standing';
import type {
  PanFields,
  RackRecord,
  ReadingRecord,
  RoundStart,
} from '../../domain/records/rack-records';
import { newestPerNote } from '../../domain/records/record-order';
import { nextNote, type RoundProgress } from '../../domain/rounds/round-progress';
import type { ToleranceSet } from '../../domain/tuning/tolerances';
import { cents, type MidiNote } from '../../domain/tuning/units';

export interface OpenRound {
  readonly fields: PanFields;
  readonly start: RoundStart;
  /** With all that was heard: the next strike is added to it. */
  readonly progress: RoundProgress;
  /** The same as far as it is on disk: this is what the screen shows, so that nothing is called done too early. */
  readonly kept: RoundProgress;
  /** The readings kept in this round; the newest of a note counts. */
  readonly readings: readonly ReadingRecord[];
  /** The note that was done last. */
  readonly lastDone: MidiNote | null;
  /** Every note is done, or the user ended it: it has its end record. */
  readonly isOver: boolean;
  /** It belongs to a knock check: choked notes are to be heard as notes. */
  readonly mayBeChoked: boolean;
}

/** A standing, and what it was judged on. */
export interface StandingSoFar extends JudgedStanding {
  readonly judged: JudgedNote | null;
}

/** How the notes of the round stand: those with a reading or a mark. */
export function standingsOf(
  round: OpenRound,
  limits: ToleranceSet,
): ReadonlyMap<MidiNote, StandingSoFar> {
  const { fields, start, kept, readings } = round;
  const newest = newestPerNote(readings);
  const standings = new Map<MidiNote, StandingSoFar>();
  for (const [note, { mark }] of kept.notes) {
    const record = newest.get(note);
    if (!record && (mark === 'none' || mark === 'skipped')) continue;
    // The offset is taken off where the note is judged.
    const reading = record && keptReading(record, { a4: start.a4, offset: cents(0) });
    const judged = reading ? judgedNote(note, reading, wishOf(fields.layout, note)) : null;
    const walking = reading?.walking ?? null;
    standings.set(note, { judged, ...standingOf({ judged, walking, mark }, limits) });
  }
  return standings;
}

/** The note that a mark would go to: the one that is asked for, else the one that was done last. */
export const noteToMark = ({ kept, lastDone }: OpenRound): MidiNote | null =>
  nextNote(kept) ?? lastDone;

/** The round once `record`, and with it all of `progress`, is on disk. */
export const keptUpTo = (
  round: OpenRound,
  progress: RoundProgress,
  record: RackRecord,
): OpenRound => ({
  ...round,
  kept: { ...progress, chosen: round.progress.chosen },
  readings: record.kind === 'reading' ? [...round.readings, record] : round.readings,
});
