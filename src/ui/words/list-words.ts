// Several things in one sentence.
import { displayName } from '../../domain/tuning/note-names';
import type { MidiNote } from '../../domain/tuning/units';

/** British: no comma before "and". */
const sentence = new Intl.ListFormat('en-GB', { type: 'conjunction' });
const row = new Intl.ListFormat('en-GB', { type: 'unit' });

/** "C4", "C4 and D5", "C4, D5 and E♭5". */
export const listWords = (parts: readonly string[]): string => sentence.format(parts);

export const noteListWords = (notes: readonly MidiNote[]): string =>
  listWords(notes.map(displayName));

/** One after the other: "C4, D5, E♭5". Empty ones are left out. */
export const rowWords = (parts: readonly string[]): string =>
  row.format(parts.filter((part) => part !== ''));

export const noteRowWords = (notes: readonly MidiNote[]): string =>
  rowWords(notes.map(displayName));

/** The first `most`, and how many more there are: "C4, D5 and 3 more". */
export function firstWords(parts: readonly string[], most: number): string {
  const more = parts.length - most;
  return more > 0 ? listWords([...parts.slice(0, most), `${more} more`]) : rowWords(parts);
}
