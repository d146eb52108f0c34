// Lines that are no partial of the struck note, each with the ring partner it most likely comes from.
import type { ListeningContext, RingingLine } from '../domain/measurement/strike';
import { frequencyOf, nearestNote } from '../domain/tuning/equal-temperament';
import { centsBetween, decibels, hertz, type MidiNote, midiNote } from '../domain/tuning/units';
import type { SpectralLine } from './strike-spectrum';

const reach = 60;
const limit = 8;

/** The other audible lines (linear amplitudes in), strongest first, without the struck note's higher harmonics. */
export function ringingLines(
  lines: readonly SpectralLine[],
  fundamentalHz: number,
  context: ListeningContext,
): readonly RingingLine[] {
  return lines
    .filter((line) => {
      const order = Math.round(line.hz / fundamentalHz);
      return order < 5 || Math.abs(centsBetween(order * fundamentalHz, line.hz)) > 40;
    })
    .slice(0, limit)
    .map((line) => ({
      hz: hertz(line.hz),
      levelDb: decibels(20 * Math.log10(Math.max(line.amplitude, 1e-9))),
      ...originOf(line.hz, context),
    }));
}

function originOf(
  hz: number,
  { notes, a4 }: ListeningContext,
): { note: MidiNote | null; partial: 1 | 2 | 3 | 4 | null } {
  for (const partial of [1, 2, 3, 4] as const) {
    const note = nearestNote(hertz(hz / partial), a4);
    const away = Math.abs(centsBetween(frequencyOf(note, a4), hz / partial));
    if (away <= reach && (notes === null || notes.includes(note))) {
      return { note: midiNote(note), partial };
    }
  }
  return { note: null, partial: null };
}
