// What is said when a round is to end although notes are missing, and when one goes on.
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import { counted } from '../count-words';
import { firstWords } from '../list-words';

export const roundEndWords = {
  finishAnyway: 'Finish anyway',
  allHeard: 'All notes are heard. Strike any of them again, or finish.',
  goOn: 'Keep measuring',
  goOnWith: 'Go on with this round',
  takeOut: 'Take this round out',
} as const;

const mostNamed = 6;

/** "28 of 29 notes are missing: D5, E5, …" */
export function missingWords(left: readonly MidiNote[], all: number): string {
  const names = firstWords(left.map(displayName), mostNamed);
  const are = left.length === 1 ? 'is' : 'are';
  return `${left.length} of ${counted(all, 'note')} ${are} missing: ${names}. Finish the round all the same?`;
}
