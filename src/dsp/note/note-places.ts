// Where the notes of a pan are: where they were last measured, else where equal temperament has them.
import type { KnownNote, ListeningContext } from '../../domain/measurement/strike';
import { frequencyOf, nearestNote } from '../../domain/tuning/equal-temperament';
import { centsBetween, hertz, type MidiNote } from '../../domain/tuning/units';

/**
 * How far a line may lie from a note's place and still be its fundamental, cents (all limits here: chosen, no source).
 */
const reachOfNote = 60;
const reachOfExpected = 110;
/**
 * Not the expected note but another is meant when the other was measured this near to the line, and nearer by this,
 * cents.
 */
const reachOfKnown = 25;
const nearerByKnown = 20;

/** The note as it was last measured, or null. */
export const knownNote = (note: MidiNote, { known }: ListeningContext): KnownNote | null =>
  known?.find((each) => each.note === note) ?? null;

/** Where the note's fundamental should be, Hz. */
export const placeOf = (note: MidiNote, context: ListeningContext): number =>
  knownNote(note, context)?.fundamentalHz ?? frequencyOf(note, context.a4);

/** The note whose fundamental a line at `hz` can be, or null. */
export function noteAt(hz: number, context: ListeningContext): MidiNote | null {
  const { expected, notes, a4 } = context;
  const away = (note: MidiNote): number => Math.abs(centsBetween(placeOf(note, context), hz));
  let best: MidiNote | null = null;
  for (const note of notes ?? []) {
    if (away(note) <= (best === null ? reachOfNote : away(best))) best = note;
  }
  if (expected !== null && away(expected) <= reachOfExpected) {
    const isOther =
      best !== null &&
      knownNote(best, context) !== null &&
      away(best) <= reachOfKnown &&
      away(best) + nearerByKnown <= away(expected);
    return isOther ? best : expected;
  }
  return notes === null ? nearestNote(hertz(hz), a4) : best;
}
