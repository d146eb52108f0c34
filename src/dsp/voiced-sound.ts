// Tells a voice or a wind instrument by what a pan never has: a long row of exact harmonics.
import { centsBetween } from '../domain/tuning/units';

const highestOrder = 12;
const reachCents = 14;
const rowLength = 6;

/**
 * Whether `frequencies` hold six neighbouring exact harmonics of one fundamental that carries `hz`.
 * A pan's tuned partials are three or four, and its other modes lie off the row.
 */
export function isVoiced(frequencies: readonly number[], hz: number): boolean {
  return [1, 2, 3].some((divisor) => {
    const base = hz / divisor;
    let row = 0;
    for (let order = 1; order <= highestOrder && row < rowLength; order++) {
      const hit = frequencies.some(
        (each) => Math.abs(centsBetween(order * base, each)) < reachCents,
      );
      row = hit ? row + 1 : 0;
    }
    return row >= rowLength;
  });
}
