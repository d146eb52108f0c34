// Whether the clock of the phone can be right: it cannot be before the app was made, nor long before what is kept.
import type { Instant } from '../tuning/units';

/** What speaks against the clock: the day of the build, or something kept that is dated later than now. */
export type ClockDoubt =
  | { readonly kind: 'before-build' }
  | { readonly kind: 'before-records'; readonly newest: Instant };

/** Two phones' time zones and an hour of summer time lie within it. */
const doubtful = 24 * 3600 * 1000;

export interface ClockKnowledge {
  readonly now: Instant;
  /** The day on which this version was built. */
  readonly builtAt: Instant;
  /** When the newest record that is known was made, by the clock of its phone; null without any. */
  readonly newest: Instant | null;
}

/** Null where nothing speaks against the clock. */
export function clockDoubt({ now, builtAt, newest }: ClockKnowledge): ClockDoubt | null {
  if (now < builtAt - doubtful) return { kind: 'before-build' };
  if (newest !== null && now < newest - doubtful) return { kind: 'before-records', newest };
  return null;
}
