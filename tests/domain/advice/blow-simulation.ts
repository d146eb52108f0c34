// Sets of blows on a simulated pan whose response nobody told the app, with measurements as a reading has them.

import type { BlowSet } from '../../../src/domain/advice/blow-sets';
import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import {
  allWheres,
  type BlowFirmness,
  type BlowWhere,
  strengthOf,
} from '../../../src/domain/records/blow-places';
import { instant, type MidiNote } from '../../../src/domain/tuning/units';
import { createHiddenResponse } from '../../../src/practice-pan/hidden-response';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';

/** Of a measured change: two readings of three strikes that scatter by 0.3 cents. */
export const changeSigma = Math.hypot(0.3, 0.3) / Math.sqrt(3);

export interface SimulatedSets {
  /** Another set, at one of the tuner's places on one of the pan's notes. */
  next(): { readonly set: BlowSet; readonly truth: readonly [number, number, number] };
}

/** `placeCount`: how many of the 14 places and sides this tuner uses; `noteCount`: on how many notes. */
export function simulatedSets(seed: number, placeCount = 5, noteCount = 6): SimulatedSets {
  const random = seededRandom(seed * 101 + 7);
  const normal = gaussianFrom(random);
  const response = createHiddenResponse(seed);
  const some = <T>(from: readonly T[], count: number): readonly T[] => {
    const left = [...from];
    return Array.from({ length: count }, () =>
      left.splice(Math.floor(random() * left.length), 1),
    ).flat();
  };
  const places: readonly BlowWhere[] = some(allWheres, placeCount);
  const notes: readonly MidiNote[] = some(notesOf(lowCLead), noteCount);
  let made = 0;
  return {
    next() {
      made++;
      const where = places[Math.floor(random() * places.length)] ?? {
        place: 'middle',
        side: 'below',
      };
      const note = notes[Math.floor(random() * notes.length)] ?? (60 as MidiNote);
      const firmness: BlowFirmness = random() < 0.8 ? 'light' : 'firm';
      const count = 1 + Math.floor(random() * 4);
      const truth: [number, number, number] = [0, 0, 0];
      for (let n = 0; n < count; n++) {
        const moved = response.oneBlow(note, where, firmness, random);
        for (const k of [0, 1, 2] as const) truth[k] += moved[k];
      }
      const measured = (value: number) => value + changeSigma * normal();
      const set: BlowSet = {
        ...where,
        id: `set-${String(made).padStart(3, '0')}`,
        at: instant(made * 60_000),
        note,
        firmness,
        strength: strengthOf(firmness, count),
        change: [measured(truth[0]), measured(truth[1]), measured(truth[2])],
        sigma: [changeSigma, changeSigma, changeSigma],
      };
      return { set, truth };
    },
  };
}
