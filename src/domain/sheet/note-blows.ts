// The hammer blows a pan was given, summed note by note.
import type { Blows, LoggedBlows } from '../records/rack-records';
import { olderFirst } from '../records/record-order';
import { instant, type MidiNote } from '../tuning/units';
import type { NoteBlows } from './sheet';

/** One entry for each note that was hammered, lowest first. `blows` are without erased ones, in any order. */
export function noteBlows(blows: readonly Blows[]): readonly NoteBlows[] {
  const byNote = new Map<MidiNote, Blows[]>();
  for (const set of [...blows].sort(olderFirst)) {
    byNote.set(set.note, [...(byNote.get(set.note) ?? []), set]);
  }
  return [...byNote]
    .sort(([one], [other]) => one - other)
    .map(([note, sets]) => ({
      note,
      sets: sets.length,
      counted: sets.reduce((sum, { count }) => sum + (count ?? 0), 0),
      hasUncounted: sets.some(({ count }) => count === null),
      lastAt: instant(Math.max(...sets.map(({ at }) => at))),
      logged: differentOnes(sets.flatMap(({ logged }) => logged ?? [])),
      unlogged: sets.filter(({ logged }) => logged === null).length,
    }));
}

function differentOnes(logged: readonly LoggedBlows[]): readonly LoggedBlows[] {
  const byWhere = new Map(
    logged.map(({ place, side, firmness }) => [
      `${place} ${side} ${firmness}`,
      { place, side, firmness },
    ]),
  );
  return [...byWhere.values()];
}
