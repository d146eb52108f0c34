// Several things in one sentence.
import { displayName } from '../../domain/tuning/note-names';
import type { MidiNote } from '../../domain/tuning/units';

/** "C4", "C4 and D5", "C4, D5 and E♭5". */
export function listWords(parts: readonly string[]): string {
  const last = parts.at(-1) ?? '';
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

export const noteListWords = (notes: readonly MidiNote[]): string =>
  listWords(notes.map(displayName));
