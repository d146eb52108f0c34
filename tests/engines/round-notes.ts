// What is planted in the notes of the round.
import type { Planted } from './strike-files';

/** Notes of the round that are struck. */
export const roundNotes = 6;

/** The truth of the note that is asked for as the k-th, from 0 on. */
export const roundTruth = (k: number): Planted => ({
  fundamental: [-7, 3, -12, 6, 0, 9][k] ?? 0,
  octave: 1,
  third: -2,
});
