// Builds the notes of a drum from short lists, for the files of the built-in layouts.
import { parseNote } from '../tuning/note-names';
import { type MidiNote, midiNote } from '../tuning/units';
import type { NotePlace } from './layout';

type NoteName = `${'C' | 'D' | 'E' | 'F' | 'G' | 'A' | 'B'}${'' | '#' | 'b'}${number}`;

/** A note, its hour on the drum, and its distance from the drum's middle; without one it lies along the rim. */
export type NamedSpot = readonly [name: NoteName, clock: number, radius?: number];

/** Half axes of an oval, as parts of the rim's radius. */
export interface OvalSize {
  readonly along: number;
  readonly across: number;
}

export type SizeOf = (note: MidiNote, ring: NotePlace['ring']) => OvalSize;

/** No oval is drawn thinner than this: its name and a number must fit inside (chosen, no source). */
const thinnest = 0.093;
/** Metal left between an outer note and the rim, as a part of the rim's radius (chosen, no source). */
const besideRim = 0.025;

/** MIDI number of a note that is spelt out in the program; throws for a spelling that is no note. */
export function noteNamed(name: NoteName): MidiNote {
  const note = parseNote(name);
  if (note === null) throw new Error(`${name} is no note`);
  return note;
}

/** Every semitone from `lowest` to `highest`, both included. */
export const semitones = (lowest: NoteName, highest: NoteName): readonly MidiNote[] => {
  const first = noteNamed(lowest);
  return Array.from({ length: noteNamed(highest) - first + 1 }, (_, k) => midiNote(first + k));
};

export const placesOn = (
  ring: NotePlace['ring'],
  sizeOf: SizeOf,
  spots: readonly NamedSpot[],
): readonly NotePlace[] =>
  spots.map(([name, clock, radius]) => {
    const note = noteNamed(name);
    const size = sizeOf(note, ring);
    return { note, ring, clock, radius: radius ?? 1 - besideRim - size.across, ...size };
  });

/**
 * Sizes where none are published: the mean half axis is `scale` at the lowest note and halves every 25 semitones
 * (312 to 200 mm in 16 semitones on the tenor bass measured by Kronman, Steel Pan Tuning, 1992), and outer
 * notes are longer the lower they are (there 1.6 times as long as wide, down to 1.1).
 */
export function sizesByPitch(lowest: NoteName, highest: NoteName, scale: number): SizeOf {
  const low = noteNamed(lowest);
  const span = Math.max(1, noteNamed(highest) - low);
  return (note, ring) => {
    const mean = scale * 2 ** (-(note - low) / 25);
    const outer = 1.55 - (0.4 * (note - low)) / span;
    const longer = Math.sqrt(ring === 'outer' ? outer : ring === 'middle' ? 1.15 : 1.05);
    const across = Math.max(thinnest, mean / longer);
    return { along: Math.max(across, mean * longer), across };
  };
}

/** Said of notes and places that no published page or drawing gives. */
export const noSource = 'We have no reliable source. Check against your pan.';
