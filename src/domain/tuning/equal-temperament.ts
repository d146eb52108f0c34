// Twelve-tone equal temperament over a movable A4.
import { type Hertz, hertz, type MidiNote, midiNote } from './units';

/** Standard tuning frequency, A4 = 440 Hz (ISO 16:1975). */
export const standardA4: Hertz = hertz(440);
/** Range of band pitches that can be set, Hz. */
export const lowestA4: Hertz = hertz(400);
export const highestA4: Hertz = hertz(480);

/** Frequency of `note` in equal temperament: a4 · 2^((note − 69) / 12). */
export const frequencyOf = (note: MidiNote, a4: Hertz = standardA4): Hertz =>
  hertz(a4 * 2 ** ((note - 69) / 12));

/** Note of equal temperament nearest to `frequency`, by interval. */
export const nearestNote = (frequency: Hertz, a4: Hertz = standardA4): MidiNote =>
  midiNote(Math.round(69 + 12 * Math.log2(frequency / a4)));
