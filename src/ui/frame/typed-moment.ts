// Moments as the phone's own fields for days and times take and give them: in local time, "2026-05-03T18:05".
import { type Instant, instant } from '../../domain/tuning/units';

const two = (value: number): string => String(value).padStart(2, '0');

/** Minutes that this phone's time is ahead of UTC at a moment. */
export const minutesAhead = (at: number): number => -new Date(at).getTimezoneOffset();

/** For a field of the type `date`. */
function dayText(at: number): string {
  const day = new Date(at);
  return `${String(day.getFullYear()).padStart(4, '0')}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** For a field of the type `datetime-local`. */
export function momentText(at: number): string {
  const moment = new Date(at);
  return `${dayText(at)}T${two(moment.getHours())}:${two(moment.getMinutes())}`;
}

/** What such a field gives; a day alone is its noon, so that no change of the clock makes it another day. Null if it is none. */
export function typedMoment(text: string): Instant | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?/.exec(text.trim());
  if (!parts) return null;
  const [year = 0, month = 0, day = 0, hours = 12, minutes = 0] = parts
    .slice(1)
    .flatMap((part) => (part === undefined ? [] : [Number(part)]));
  const moment = new Date(year, month - 1, day, hours, minutes);
  const isReal = moment.getMonth() === month - 1 && moment.getDate() === day;
  return isReal ? instant(moment.getTime()) : null;
}
