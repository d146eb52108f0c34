// A simulated pan that can be hammered.

import type { ProfessionalLimits } from '../advice/professional-limits';
import type { BlowFirmness, BlowWhere } from '../records/blow-places';
import type { ToleranceSet } from '../tuning/tolerances';
import type { Hertz, MidiNote } from '../tuning/units';
import type { Judged } from '../tuning/verdict';
import type { PracticeSource } from './sound-ports';

/** One flat note on a good pan; a pan before its yearly tuning; a pan that fell. */
export const practiceLevels = ['one-flat', 'some-out', 'dropped'] as const;
export type PracticeLevel = (typeof practiceLevels)[number];

export interface HammeredSource extends PracticeSource {
  /** This many blows: the note's partials move, and those of its neighbours a little. Makes no sound. */
  hammer(note: MidiNote, where: BlowWhere, firmness: BlowFirmness, count: number): void;
  /** Every note as it truly is now, lowest first; for the end of the practice, not to be seen while hammering. */
  tuning(): readonly Judged[];
  /**
   * What following the suggestions alone makes of these notes, in this order, on the same pan as it was at first.
   * Computing takes a while: `rest` is waited for after each set of blows.
   */
  patientWork(
    notes: readonly MidiNote[],
    rules: { readonly limits: ToleranceSet; readonly professional: ProfessionalLimits },
    rest: () => Promise<void>,
  ): Promise<PatientOutcome>;
}

export interface PatientOutcome {
  /** Every note of the pan afterwards. */
  readonly tuning: readonly Judged[];
  /** Sets of blows on each note, in the order worked. */
  readonly work: readonly {
    readonly note: MidiNote;
    readonly sets: number;
    /** Why no more was suggested. */
    readonly end: 'leave' | 'professional' | 'sets-used-up';
  }[];
}

/** Makes a pan of a level that is tuned to `a4`, another one each time. */
export type PracticePans = (level: PracticeLevel, a4: Hertz) => Promise<HammeredSource>;
