// What the settings hold for the bench.

import { type ProfessionalLimits, usualProfessionalLimits } from '../advice/professional-limits';
import type { WorkPlan } from '../bench/work-plan';
import { blowFirmnesses, blowPlaces, blowSides } from '../records/blow-places';
import type { LoggedBlows } from '../records/rack-records';

export interface BenchSettings {
  /** The user has said once that a tuner has shown them how, and has read the cautions. */
  readonly isTrained: boolean;
  /** Suggest what to try next; only for those who are trained. */
  readonly suggestsBlows: boolean;
  /** Beyond these a note is for a professional. */
  readonly professional: ProfessionalLimits;
  /** Where and how the last logged blows fell. */
  readonly lastBlows: LoggedBlows | null;
  /** Log blows that are heard as the last ones were. */
  readonly repeatsBlows: boolean;
  readonly work: WorkPlan | null;
}

export const usualBenchSettings: BenchSettings = {
  isTrained: false,
  suggestsBlows: true,
  professional: usualProfessionalLimits,
  lastBlows: null,
  repeatsBlows: false,
  work: null,
};

/** What each field may hold. */
export const isValidForBench: Readonly<Record<keyof BenchSettings, (value: unknown) => boolean>> = {
  isTrained: isBoolean,
  suggestsBlows: isBoolean,
  professional: (value) => {
    const { farthest, withoutOctave, shortestDecay, falling } = partsOf(value);
    return (
      isWithin(farthest, 5, 1200) &&
      isBoolean(withoutOctave) &&
      isWithin(shortestDecay, 0, 1) &&
      isBoolean(falling)
    );
  },
  lastBlows: (value) => {
    if (value === null) return true;
    const { place, side, firmness } = partsOf(value);
    return isIn(blowPlaces, place) && isIn(blowSides, side) && isIn(blowFirmnesses, firmness);
  },
  repeatsBlows: isBoolean,
  work: (value) => {
    if (value === null) return true;
    const { pan, notes, round } = partsOf(value);
    return (
      typeof pan === 'string' &&
      typeof round === 'string' &&
      Array.isArray(notes) &&
      notes.length <= 128 &&
      notes.every((note) => Number.isInteger(note) && isWithin(note, 0, 127))
    );
  },
};

function isBoolean(value: unknown): boolean {
  return typeof value === 'boolean';
}

const isWithin = (value: unknown, least: number, most: number): boolean =>
  typeof value === 'number' && value >= least && value <= most;

const isIn = (values: readonly string[], value: unknown): boolean =>
  typeof value === 'string' && values.includes(value);

const partsOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
