// A layout: where the notes of a pan lie, as the player sees the drums.
import type { ThirdKind } from '../tuning/third-kind';
import type { Cents, MidiNote } from '../tuning/units';

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
  /** The third partial this note is tuned to; if missing, the ear finds out. */
  readonly third?: ThirdWish;
  /** How far from equal temperament this note is meant to be. */
  readonly offset?: Cents;
}

/** A note's third partial: a twelfth (3:1), a double octave (4:1), or not judged. */
export type ThirdWish = ThirdKind | 'none';

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
  /** What about it is doubtful or unknown, in sentences for the screen. */
  readonly doubts?: readonly string[];
}

/** All notes of a layout, lowest first. */
export const notesOf = (layout: PanLayout): readonly MidiNote[] =>
  layout.drums
    .flatMap((drum) => drum.notes.map((place) => place.note))
    .sort((low, high) => low - high);
