// What it is worth that a note is the one that is to be struck.
import type { SeenExample } from './ear-features';
import { dot } from './fits';

/** How often a player strikes another note than the asked one: nobody has counted; one in fifty (common sense). */
const otherNote = 0.02;
const largest = 8;
const step = 0.25;

/** By how much the struck note is likelier than any other, nepers; null where it is no candidate. */
export function marginOf({ candidates, right }: SeenExample, note: Float64Array): number | null {
  const own = candidates[right];
  if (!own) return null;
  const rivals = candidates.filter((each) => each.note !== own.note);
  return dot(own.features, note) - Math.max(...rivals.map((each) => dot(each.features, note)), -50);
}

/**
 * The bonus (nepers) by which the struck notes are likeliest, if one in fifty is another one than was asked for: then
 * the best other candidate was.
 */
export function fitExpected(margins: readonly number[]): number {
  const surprise = (margin: number): number => Math.log(1 + Math.exp(-margin));
  let found = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let bonus = 0; bonus <= largest; bonus += step) {
    let sum = 0;
    for (const margin of margins) {
      sum += (1 - otherNote) * surprise(margin + bonus) + otherNote * surprise(margin - bonus);
    }
    if (sum >= least) continue;
    least = sum;
    found = bonus;
  }
  return found;
}
