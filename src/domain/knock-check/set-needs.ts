// What a set needs: pitch classes, from the keys it is played in, from saved tunes, or tapped one by one.
import { notesOf, type PanLayout } from '../pans/layout';
import type { MidiNote } from '../tuning/units';

declare const pitchClassUnit: unique symbol;
/** A note's name without its octave: 0 = C, 1 = C♯ … 11 = B. */
export type PitchClass = number & { readonly [pitchClassUnit]: 'PitchClass' };

export const pitchClassOf = (note: number): PitchClass => (((note % 12) + 12) % 12) as PitchClass;

export const allPitchClasses: readonly PitchClass[] = Array.from({ length: 12 }, (_, k) =>
  pitchClassOf(k),
);

/** One of the band's tunes as the notes it uses. */
export interface SavedTune {
  readonly name: string;
  readonly notes: readonly PitchClass[];
}

/** What was chosen for tonight; nothing chosen means every note of the pan. */
export interface SetNeeds {
  /** Key notes of major keys. */
  readonly keys: readonly PitchClass[];
  /** Names of saved tunes. */
  readonly tunes: readonly string[];
  /** Tapped one by one. */
  readonly notes: readonly PitchClass[];
}

export const noNeeds: SetNeeds = { keys: [], tunes: [], notes: [] };

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

const isPitchClasses = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.length <= 12 &&
  value.every((each) => Number.isInteger(each) && each >= 0 && each <= 11);

/** Longest name of a tune, characters; most tunes kept. */
export const longestTuneName = 60;
export const mostTunes = 200;

const isTuneName = (name: unknown): boolean =>
  typeof name === 'string' && name.trim() !== '' && name.length <= longestTuneName;

/** Whether stored data is a list of saved tunes. */
export const areTunes = (value: unknown): boolean =>
  Array.isArray(value) &&
  value.length <= mostTunes &&
  value.every(
    (tune: unknown) =>
      typeof tune === 'object' &&
      tune !== null &&
      'name' in tune &&
      'notes' in tune &&
      isTuneName(tune.name) &&
      isPitchClasses(tune.notes),
  );

/** Whether stored data says what a set needs. */
export function areNeeds(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const { keys, tunes, notes } = value as Readonly<Record<string, unknown>>;
  return (
    isPitchClasses(keys) &&
    isPitchClasses(notes) &&
    Array.isArray(tunes) &&
    tunes.length <= mostTunes &&
    tunes.every(isTuneName)
  );
}
