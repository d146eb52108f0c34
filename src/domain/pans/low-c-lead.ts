// The low-C lead (tenor), fourths and fifths: clockwise from the player in ascending fourths.
import { midiNote } from '../tuning/units';
import type { NotePlace, PanLayout } from './layout';

/** Pitch classes clockwise from 6 o'clock (C, F, Bb, …) as semitones over C. */
const clockwiseFromPlayer = [0, 5, 10, 3, 8, 1, 6, 11, 4, 9, 2, 7] as const;

const clockOf = (slot: number): number => ((slot + 5) % 12) + 1;

const outer: readonly NotePlace[] = clockwiseFromPlayer.map((pitch, slot) => ({
  note: midiNote(60 + pitch),
  ring: 'outer',
  clock: clockOf(slot),
  radius: 0.835,
  along: 0.195,
  across: 0.13,
}));

const middle: readonly NotePlace[] = clockwiseFromPlayer.map((pitch, slot) => ({
  note: midiNote(72 + pitch),
  ring: 'middle',
  clock: clockOf(slot),
  radius: 0.548,
  along: 0.126,
  across: 0.108,
}));

const centre: readonly NotePlace[] = [
  { pitch: 0, clock: 6.3 },
  { pitch: 3, clock: 8.7 },
  { pitch: 1, clock: 11.1 },
  { pitch: 4, clock: 1.5 },
  { pitch: 2, clock: 3.9 },
].map(({ pitch, clock }) => ({
  note: midiNote(84 + pitch),
  ring: 'centre',
  clock,
  radius: 0.258,
  along: 0.1,
  across: 0.095,
}));

export const lowCLead: PanLayout = {
  id: 'low-c-lead',
  name: 'Lead, low C',
  drums: [{ name: 'lead', notes: [...outer, ...middle, ...centre] }],
  source:
    'Order of notes: three published drawings and pages of tenors in fourths and fifths agree. ' +
    'Sizes, radii and the places of the five centre notes are drawn to be legible and to leave every ' +
    'note 44 px for a finger on a screen of 320 px, not measured.',
};
