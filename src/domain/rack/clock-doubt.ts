// Whether the clock of the phone can be right: it cannot be before the app was made, nor long before what is kept.
import { type Instant, instant } from '../tuning/units';

/** A clock this far behind is doubtful, ms: time zones of two phones and an hour of summer time lie within it. */
const doubtful = 24 * 3600 * 1000;

/**
 * Of `seen`, the day of the build and the times of what is kept (each by the clock of its phone): the latest, where
 * the clock is behind it. Null where nothing speaks against the clock.
 */
export function clockDoubt(now: Instant, seen: readonly Instant[]): Instant | null {
  const latest = instant(Math.max(now, ...seen));
  return latest > now + doubtful ? latest : null;
}
