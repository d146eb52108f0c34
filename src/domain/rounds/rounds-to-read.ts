// Which rounds of a pan are read to show its history: each costs time, and nobody can tell a thousand points apart.
import type { RoundStart } from '../records/rack-records';

/** How many points of unlisted rounds the chart shows (own choice). */
export const mostBetween = 80;

/**
 * Of all rounds, newest first: the `listed` newest, so many of the older ones as a chart can show, evenly over all of
 * them, the oldest among them, and those of `needed`. All of them where there are no more than that.
 */
export function roundsToRead(
  rounds: readonly RoundStart[],
  listed: number,
  needed: readonly RoundStart[] = [],
): readonly RoundStart[] {
  const older = rounds.length - listed;
  if (older <= mostBetween) return rounds;
  const step = (older - 1) / (mostBetween - 1);
  const between = Array.from({ length: mostBetween }, (_, k) => listed + Math.round(k * step));
  const chosen = new Set([...between.map((k) => rounds[k]?.id), ...needed.map(({ id }) => id)]);
  return rounds.filter(({ id }, k) => k < listed || chosen.has(id));
}
