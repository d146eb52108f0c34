// The notes of a lead in fourths and fifths: three rings, clockwise from the player in ascending fourths.
import { type MidiNote, midiNote } from '../../tuning/units';
import type { NotePlace } from '../layout';
import type { SizeOf } from '../place-notes';

/** Pitch classes clockwise from 6 o'clock (C, F, Bb, …) as semitones over C. */
const clockwiseFromPlayer = [0, 5, 10, 3, 8, 1, 6, 11, 4, 9, 2, 7] as const;

const clockOf = (slot: number): number => ((slot + 5) % 12) + 1;

/** Leaves 44 px for a finger on a screen of 320 px, where the five notes in the centre are the tightest. */
const radiusOf = { middle: 0.548, centre: 0.258 } as const;

/** Twelve notes from `lowest` upwards along the rim, the next twelve in the middle, five in the centre at `clocks`. */
export function fourthsAndFifths(
  lowest: MidiNote,
  sizeOf: SizeOf,
  clocks: readonly number[],
): readonly NotePlace[] {
  const ringOf = (ring: 'outer' | 'middle', from: number): readonly NotePlace[] =>
    clockwiseFromPlayer.map((pitch, slot) => {
      const note = midiNote(from + ((pitch - (from % 12) + 12) % 12));
      const size = sizeOf(note, ring);
      const radius = ring === 'outer' ? 0.975 - size.across : radiusOf.middle;
      return { note, ring, clock: clockOf(slot), radius, ...size };
    });
  const centre = clocks.map((clock, k): NotePlace => {
    const note = midiNote(lowest + 24 + k);
    return { note, ring: 'centre', clock, radius: radiusOf.centre, ...sizeOf(note, 'centre') };
  });
  return [...ringOf('outer', lowest), ...ringOf('middle', lowest + 12), ...centre];
}
