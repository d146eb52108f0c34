// What a set needs: pitch classes, from the keys it is played in, from saved tunes, or tapped one by one.
import { notesOf, type PanLayout } from '../pans/layout';
import type { MidiNote } from '../tuning/units';
import { type PitchClass, pitchClassOf, type SavedTune, type SetNeeds } from './saved-tunes';

/** Steps of the major scale in semitones above its key note. */
const majorSteps = [0, 2, 4, 5, 7, 9, 11] as const;

/** The notes of a major key. */
export const notesOfKey = (key: PitchClass): readonly PitchClass[] =>
  majorSteps.map((step) => pitchClassOf(key + step));

/** All pitch classes that the set needs, or null for all of them because nothing was chosen. */
export function neededClasses(
  { keys, tunes, notes }: SetNeeds,
  saved: readonly SavedTune[],
): ReadonlySet<PitchClass> | null {
  const needed = new Set([
    ...keys.flatMap(notesOfKey),
    ...saved.filter(({ name }) => tunes.includes(name)).flatMap((tune) => tune.notes),
    ...notes,
  ]);
  return needed.size === 0 ? null : needed;
}

/** The notes of a pan that the set needs, lowest first. */
export const neededNotes = (
  layout: PanLayout,
  classes: ReadonlySet<PitchClass> | null,
): readonly MidiNote[] =>
  [...new Set(notesOf(layout))].filter(
    (note) => classes === null || classes.has(pitchClassOf(note)),
  );
