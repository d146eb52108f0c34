// What is known of a pan's notes from readings, in the form that helps the ear.
import type { KnownNote } from '../measurement/strike';
import type { ReadingRecord } from '../records/rack-records';
import { type Hertz, hertz, type MidiNote } from '../tuning/units';

/** The notes with their partials as last measured: the middle one of each reading's strikes; later readings replace earlier ones. */
export function knownNotes(readings: readonly ReadingRecord[]): readonly KnownNote[] {
  const known = new Map<MidiNote, KnownNote>();
  for (const { note, strikes } of [...readings].sort((one, other) => one.at - other.at)) {
    const fundamental = middle(strikes.map((strike) => strike.fundamental.hz));
    if (fundamental === null) continue;
    // Two lines at the octave are not known to be either.
    const octaves = strikes.flatMap(({ octave, octaveRival }) =>
      octave && !octaveRival ? [octave.hz] : [],
    );
    known.set(note, { note, fundamentalHz: fundamental, octaveHz: middle(octaves) });
  }
  return [...known.values()];
}

/** The median; of two in the middle the lower one. */
function middle(values: readonly Hertz[]): Hertz | null {
  const sorted = [...values].sort((low, high) => low - high);
  const value = sorted[Math.floor((sorted.length - 1) / 2)];
  return value === undefined ? null : hertz(value);
}
