// Which days a tuner's visit can have: a year that was typed short ("0026") is none of them.
import { type Instant, instant } from '../tuning/units';

/**
 * The beginning of 1971, UTC. Records hold no moment before 1970, and a whole year of room leaves no time zone in
 * doubt; the day of an older visit belongs in the remarks.
 */
export const earliestVisit: Instant = instant(Date.UTC(1971, 0, 1));

/** Whether a visit can have been at `moment`, written down at `now`. */
export const isVisitDay = (moment: Instant, now: Instant): boolean =>
  moment >= earliestVisit && moment <= now;
