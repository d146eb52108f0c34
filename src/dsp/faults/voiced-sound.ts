// Tells a voice, a wind instrument or mains hum by what a pan never has: a long row of exact harmonics.
import { centsBetween } from '../../domain/tuning/units';

const highestOrder = 16;
const reachCents = 16;
/** A pan tunes no partial from here on … */
const firstUntuned = 5;
/** … and of its other modes no more than two fall on such a harmonic by chance (seen on seeded scenes). */
const mostByChance = 2;
/** The line may itself be the octave or the twelfth of a voice: that many neighbouring harmonics then. */
const rowLength = 6;

/**
 * Whether `frequencies` hold the exact harmonics of one voice that carries `hz`.
 * They are counted from the line next to `hz`, for a voice may have moved since.
 */
export function isVoiced(frequencies: readonly number[], hz: number): boolean {
  const away = (each: number): number => Math.abs(centsBetween(hz, each));
  const own = frequencies.reduce((best, each) => (away(each) < away(best) ? each : best), hz * 2);
  const has = (target: number): boolean =>
    frequencies.some((each) => Math.abs(centsBetween(target, each)) < reachCents);
  let untuned = 0;
  for (let order = firstUntuned; order <= highestOrder; order++) {
    if (has(order * own)) untuned++;
  }
  if (untuned > mostByChance) return true;
  return [2, 3].some((divisor) => {
    let row = 0;
    for (let order = 1; order <= highestOrder && row < rowLength; order++) {
      row = has((order * own) / divisor) ? row + 1 : 0;
    }
    return row >= rowLength;
  });
}
