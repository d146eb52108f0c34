// Which of two lines at the octave is the note's own: the test that tells.
import type { Reading } from '../../../domain/reading/reading';
import { displayName } from '../../../domain/tuning/note-names';
import { centsWords } from '../../words/count-words';
import { twoOctavesWords } from '../../words/words';

/** The damping test of a reading with two lines at its octave, or null. */
export function dampingTest({ octave, octaveRival }: Reading) {
  if (!octave || !octaveRival) return null;
  const apart = centsWords(octave.centsFromOwn - octaveRival.centsFromOwn);
  return twoOctavesWords(apart, octaveRival.note === null ? null : displayName(octaveRival.note));
}
