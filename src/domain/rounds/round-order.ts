// The order in which a guided round asks for the notes.
import type { MidiNote } from '../tuning/units';

/**
 * Octave pairs, highest first: all notes of one name from the highest down, so that each note's octave is known
 * before the note itself (common practice, no source); the names in the order of their highest notes. On a
 * low-C lead: E6 E5 E4, Eb6 Eb5 Eb4, … C6 C5 C4, B5 B4, … F5 F4. Each note once, whatever order they come in.
 */
export function octaveOrder(notes: readonly MidiNote[]): readonly MidiNote[] {
  const downwards = [...new Set(notes)].sort((one, other) => other - one);
  const names = [...new Set(downwards.map(nameOf))];
  return names.flatMap((name) => downwards.filter((note) => nameOf(note) === name));
}

const nameOf = (note: MidiNote): number => note % 12;
