// An interrupted round as it continues, from what was kept of it.
import type { Strike } from '../measurement/strike';
import { addStrike, type Reading } from '../reading/reading';
import type { MarkKind, RoundWay } from '../records/rack-records';
import type { MidiNote } from '../tuning/units';
import { beginRound, type RoundProgress, withNote } from './round-progress';

export interface KeptOfRound {
  readonly way: RoundWay;
  readonly order: readonly MidiNote[];
  /** Readings of the round, oldest first; a later one of the same note replaces the earlier. */
  readonly readings: readonly { readonly note: MidiNote; readonly strikes: readonly Strike[] }[];
  /** The mark that holds for each marked note. */
  readonly marks: readonly { readonly note: MidiNote; readonly mark: MarkKind }[];
}

/** The round as it stood when its last record was kept; strikes on unfinished notes are not kept. */
export function resumeRound({ way, order, readings, marks }: KeptOfRound): RoundProgress {
  let progress = beginRound(way, order);
  for (const { note, strikes } of readings) {
    const known = progress.notes.get(note);
    if (!known) continue;
    let reading: Reading | null = null;
    let { lastEvent } = progress;
    for (const strike of way === 'quick' ? strikes : []) {
      lastEvent++;
      reading = addStrike(reading, {
        ...strike,
        note,
        event: lastEvent,
        provisional: false,
      }).reading;
    }
    progress = { ...withNote(progress, note, { ...known, reading, isLocked: true }), lastEvent };
  }
  for (const { note, mark } of marks) {
    const known = progress.notes.get(note);
    if (known) progress = withNote(progress, note, { ...known, mark });
  }
  return { ...progress, eventsBefore: progress.lastEvent };
}
