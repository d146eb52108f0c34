// What is known of a pan's notes from readings, in the form that helps the ear.

import type { KnownNote } from '../measurement/strike';
import { lowerMedian } from '../numbers/averages';
import type { ReadingRecord } from '../records/rack-records';
import { newestPerNote } from '../records/record-order';

/** The notes with their partials as last measured: the middle one of each reading's strikes; later readings replace earlier ones. */
export function knownNotes(readings: readonly ReadingRecord[]): readonly KnownNote[] {
  return [...newestPerNote(readings).values()].flatMap(({ note, strikes }) => {
    const fundamentalHz = lowerMedian(strikes.map((strike) => strike.fundamental.hz));
    if (fundamentalHz === null) return [];
    // Two lines at the octave are not known to be either.
    const octaves = strikes.flatMap(({ octave, octaveRival }) =>
      octave && !octaveRival ? [octave.hz] : [],
    );
    return [{ note, fundamentalHz, octaveHz: lowerMedian(octaves) }];
  });
}
