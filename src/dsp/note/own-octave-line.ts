// Two lines at a note's octave: its own, and the fundamental of the note an octave up. The stronger one is as often
// the partner's; where the two were last measured tells better.
import type { ListeningContext } from '../../domain/measurement/strike';
import { centsBetween, type MidiNote, midiNote } from '../../domain/tuning/units';
import { knownNote } from './note-places';

/**
 * A line farther than this from where it was has been moved, cents, and its old place tells nothing any more (chosen,
 * no source).
 */
const mostMoved = 30;

/**
 * Whether `second`, not `first` (Hz), is the own octave of `struck`, by the partials as they were last measured; null
 * where nothing was measured.
 */
export function isSecondOwn(
  first: number,
  second: number,
  struck: MidiNote,
  context: ListeningContext,
): boolean | null {
  const own = knownNote(struck, context)?.octaveHz ?? null;
  const partner = knownNote(midiNote(struck + 12), context)?.fundamentalHz ?? null;
  if (own === null && partner === null) return null;
  const away = (place: number | null, hz: number): number =>
    place === null ? 0 : Math.min(mostMoved, Math.abs(centsBetween(place, hz)));
  return away(own, second) + away(partner, first) < away(own, first) + away(partner, second);
}
