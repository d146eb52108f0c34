// How far off a note may be: the user's choice; no published standard exists.
import { type Cents, cents, type MidiNote, midiNote } from './units';

export interface Tolerances {
  /** Fundamental against its target, and octave against twice the own fundamental. */
  readonly main: Cents;
  /** Third partial against three or four times the own fundamental. */
  readonly third: Cents;
  /** Notes above this one are judged by their fundamental only. */
  readonly highestWithPartials: MidiNote;
}

/** The default set "good" (common practice, no source); C6 is the highest note judged by its partials. */
export const goodTolerances: Tolerances = {
  main: cents(5),
  third: cents(10),
  highestWithPartials: midiNote(84),
};
