// Moments in local time with their distance from UTC, as ISO 8601 writes them.
import type { Instant } from '../tuning/units';

/** "2026-05-03T18:05:00+02:00"; `minutesAhead` says how far local time is ahead of UTC then. */
export function localTime(at: Instant, minutesAhead: (at: Instant) => number): string {
  const ahead = minutesAhead(at);
  const local = new Date(at + ahead * 60_000).toISOString().slice(0, 19);
  const two = (value: number) => String(value).padStart(2, '0');
  const size = Math.abs(ahead);
  return `${local}${ahead < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
