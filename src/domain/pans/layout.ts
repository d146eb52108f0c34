// A layout: where the notes of a pan lie, as the player sees the drums.
import type { MidiNote } from '../tuning/units';

export interface NotePlace {
  readonly note: MidiNote;
  readonly ring: 'outer' | 'middle' | 'centre';
  /** Hour on a clock face as the player looks down into the drum; the player stands at 6. */
  readonly clock: number;
  /** Distance of the note's middle from the drum's middle, as a part of the rim's radius (0…1). */
  readonly radius: number;
  /** Half axes of the note's oval, as parts of the rim's radius; the long axis lies along the rim. */
  readonly along: number;
  readonly across: number;
}

export interface Drum {
  readonly name: string;
  readonly notes: readonly NotePlace[];
}

export interface PanLayout {
  readonly id: string;
  readonly name: string;
  readonly drums: readonly Drum[];
  /** Where the note places come from, in words. */
  readonly source: string;
}

/** All notes of a layout, lowest first. */
export const notesOf = (layout: PanLayout): readonly MidiNote[] =>
  layout.drums
    .flatMap((drum) => drum.notes.map((place) => place.note))
    .sort((low, high) => low - high);
