// The notes that may have been struck, each with the line that would be its fundamental.

import type { ListeningContext } from '../../domain/measurement/strike';
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { centsBetween, type MidiNote } from '../../domain/tuning/units';
import { isSideband, type TimedLine } from '../spectrum/line-course';
import { noteAt, placeOf } from './note-places';

/** Hz: below the lowest bass (B0, 30.9 Hz) and above the highest lead (G6, 1,568 Hz), with room to spare. */
const lowestFundamental = 27;
const highestFundamental = 2000;
/** Lines fainter than this against the strongest are no note's fundamental, dB (chosen, no source). */
const faintestDb = -42;

export interface NoteCandidate {
  readonly note: MidiNote;
  /** Index of the fundamental's line. */
  readonly line: number;
  /** How far the line lies from the note's place, cents. */
  readonly offGrid: number;
}

/** Every line that can be the fundamental of a note; a note may have several. */
export function noteCandidates(
  lines: readonly TimedLine[],
  context: ListeningContext,
): readonly NoteCandidate[] {
  const loudest = Math.max(...lines.map((line) => line.settled), 1e-9);
  return lines.flatMap((line, index) => {
    if (line.hz < lowestFundamental || line.hz > highestFundamental) return [];
    if (dbOfAmplitude(line.settled / loudest, 1e-9) < faintestDb) return [];
    if (isSideband(lines, line)) return [];
    const note = noteAt(line.hz, context);
    if (note === null) return [];
    return [
      { note, line: index, offGrid: Math.abs(centsBetween(placeOf(note, context), line.hz)) },
    ];
  });
}
