// The settings that judging depends on; when they change, cards must be made anew.

import type { Reference } from '../tuning/reference';
import { type ToleranceSet, toleranceSteps } from '../tuning/tolerances';
import type { Hertz } from '../tuning/units';

export interface CardSettings {
  /** The band's A4. */
  readonly a4: Hertz;
  readonly reference: Reference;
  readonly limits: ToleranceSet;
}

/** The settings as one text, to see whether a card was judged by them. */
export const judgingText = ({ a4, reference, limits }: CardSettings): string =>
  JSON.stringify([
    a4,
    reference,
    toleranceSteps.map((step) => [limits[step].main, limits[step].third]),
    limits.highestWithPartials,
  ]);
