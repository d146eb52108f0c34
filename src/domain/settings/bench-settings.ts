// What the settings hold for the bench.

import { type ProfessionalLimits, usualProfessionalLimits } from '../advice/professional-limits';
import type { WorkPlan } from '../bench/work-plan';
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
