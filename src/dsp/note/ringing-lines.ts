// Lines that are no partial of the struck note, each with the ring partner it most likely comes from.

import type { ListeningContext, RingingLine } from '../../domain/measurement/strike';
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { nearestNote } from '../../domain/tuning/equal-temperament';
import { centsBetween, decibels, hertz, type MidiNote } from '../../domain/tuning/units';
import type { SpectralLine } from '../spectrum/strike-spectrum';
import { knownNote, placeOf } from './note-places';

/** How far a line may lie from a partial that was measured, and from one that was not, cents (chosen, no source). */
const reachOfKnown = 20;
const reach = 60;
/** A partial is not stronger than its own fundamental by more than this, dB (octaves up to +9 were seen). */
const mostOverFundamentalDb = 12;
const limit = 8;
/**
 * What lies this near to a partial of the note is its second line or its skirt, Hz: of 1,529 lines of real strikes that
 * are no partials 460 lie within 12 Hz of a louder one, most of them 8 to 10 Hz away.
 */
const ownHz = 12;
/**
 * Glide and exchange of energy leave skirts beside any line, up to this far away, Hz, and this far below it, dB
 * (chosen, no source).
 */
const skirtHz = 26;
const skirtDb = 20;

type Partial = 1 | 2 | 3 | 4;
interface Origin {
  readonly note: MidiNote | null;
  readonly partial: Partial | null;
}
const nowhere: Origin = { note: null, partial: null };

/**
 * Those of `lines` (linear amplitudes, strongest first) that `taken` does not hold, without the struck note's higher
 * harmonics and without what stands beside a stronger line as its skirt.
 */
export function ringingLines(
  lines: readonly SpectralLine[],
  taken: readonly SpectralLine[],
  fundamentalHz: number,
  context: ListeningContext,
): readonly RingingLine[] {
  return lines
    .filter((line) => {
      const order = Math.round(line.hz / fundamentalHz);
      const isHarmonic = order >= 5 && Math.abs(centsBetween(order * fundamentalHz, line.hz)) <= 40;
      return !isHarmonic && !taken.includes(line) && !isSkirt(line, lines, taken);
    })
    .slice(0, limit)
    .map((line) => ({
      hz: hertz(line.hz),
      levelDb: decibels(dbOfAmplitude(line.amplitude, 1e-9)),
      ...originOf(line, lines, context),
    }));
}

/** Whether `line` is what a partial of the note, or any far louder line, leaves beside itself. */
const isSkirt = (
  line: SpectralLine,
  lines: readonly SpectralLine[],
  taken: readonly SpectralLine[],
): boolean =>
  taken.some((own) => Math.abs(own.hz - line.hz) < ownHz && own.amplitude > line.amplitude) ||
  lines.some(
    (other) =>
      Math.abs(other.hz - line.hz) < skirtHz &&
      dbOfAmplitude(other.amplitude / line.amplitude, 1e-9) > skirtDb,
  );

/** The nearest partial that was measured; otherwise the lowest partial of a note whose fundamental is there too. */
function originOf(
  line: SpectralLine,
  lines: readonly SpectralLine[],
  context: ListeningContext,
): Origin {
  const measured = nearestKnown(line.hz, context);
  if (measured) return measured;
  let moved = nowhere;
  for (const partial of [1, 2, 3, 4] as const) {
    const note = noteUnder(line.hz / partial, context);
    if (note === null) continue;
    if (partial !== 1 && !isThere(placeOf(note, context), line, lines)) continue;
    const isMeasured = partial <= 2 && placeOfKnown(note, partial as 1 | 2, context) !== null;
    if (!isMeasured) return { note, partial };
    // Measured elsewhere: the note counts as moved since only if the line can be nothing else.
    if (moved.note === null) moved = { note, partial };
  }
  return moved;
}

function nearestKnown(hz: number, context: ListeningContext): Origin | null {
  let found: Origin | null = null;
  let nearest = reachOfKnown;
  for (const { note } of context.known ?? []) {
    for (const partial of [1, 2] as const) {
      const place = placeOfKnown(note, partial, context);
      const away = place === null ? reach : Math.abs(centsBetween(place, hz));
      if (away >= nearest) continue;
      nearest = away;
      found = { note, partial };
    }
  }
  return found;
}

const placeOfKnown = (note: MidiNote, partial: 1 | 2, context: ListeningContext): number | null => {
  const known = knownNote(note, context);
  return (partial === 1 ? known?.fundamentalHz : known?.octaveHz) ?? null;
};

/** The pan's note nearest to `hz`, or any note where the pan is not known. */
function noteUnder(hz: number, context: ListeningContext): MidiNote | null {
  const candidates = context.notes ?? [nearestNote(hertz(hz), context.a4)];
  let found: MidiNote | null = null;
  let nearest: number = reach;
  for (const note of candidates) {
    const away = Math.abs(centsBetween(placeOf(note, context), hz));
    if (away > nearest) continue;
    nearest = away;
    found = note;
  }
  return found;
}

/** Whether a fundamental sounds at `hz`, strong enough to have `partial` as a partial. */
const isThere = (hz: number, partial: SpectralLine, lines: readonly SpectralLine[]): boolean =>
  lines.some(
    (line) =>
      Math.abs(centsBetween(hz, line.hz)) <= reach &&
      dbOfAmplitude(partial.amplitude / line.amplitude, 1e-9) <= mostOverFundamentalDb,
  );
