// Names of notes: plain ("Bb4") for data, with signs ("B♭4") for the screen.
import { type MidiNote, midiNote } from './units';

const pitchClasses = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'] as const;
const naturals: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** Plain name of a note as pan players spell it: C C# D Eb E F F# G Ab A Bb B, with the octave ("D5"). */
export function noteName(note: MidiNote): string {
  const pitchClass = pitchClasses[((note % 12) + 12) % 12];
  return `${pitchClass}${Math.floor(note / 12) - 1}`;
}

/** Name of a note for the screen, with ♯ and ♭. */
export const displayName = (note: MidiNote): string =>
  noteName(note).replace('#', '♯').replace('b', '♭');

/** The note called `name` ("D5", "f#4", "B♭3"), or null if it is no note between C-1 and G9. */
export function parseNote(name: string): MidiNote | null {
  const found = /^([A-Ga-g])([#♯b♭]?)(-?\d)$/.exec(name.trim());
  if (!found) return null;
  const [, letter = '', sign = '', octave = ''] = found;
  const natural = naturals[letter.toUpperCase()];
  if (natural === undefined) return null;
  const shift = sign === '#' || sign === '♯' ? 1 : sign === 'b' || sign === '♭' ? -1 : 0;
  const note = (Number(octave) + 1) * 12 + natural + shift;
  return note >= 0 && note <= 127 ? midiNote(note) : null;
}
