// A note's third partial where it is seen and too faint to be measured: not heard, but not missing either.

import type { RingingLine } from '../../domain/measurement/strike';
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { centsBetween, decibels, hertz, type MidiNote } from '../../domain/tuning/units';
import type { SpectralLine } from '../spectrum/strike-spectrum';

/** A line further from a third partial's place belongs to another note, cents (chosen, no source). */
const reach = 50;

/** Of the lines `seen` the strongest at the twelfth and at the double octave of `note`, without those `listed` already. */
export const faintThirds = (
  seen: readonly SpectralLine[],
  listed: readonly RingingLine[],
  ownHz: number,
  note: MidiNote,
): readonly RingingLine[] =>
  ([3, 4] as const).flatMap((partial) => {
    const line = seen.find(({ hz }) => Math.abs(centsBetween(partial * ownHz, hz)) <= reach);
    if (!line || listed.some(({ hz }) => hz === line.hz)) return [];
    const levelDb = decibels(dbOfAmplitude(line.amplitude, 1e-9));
    return [{ hz: hertz(line.hz), levelDb, note, partial }];
  });
