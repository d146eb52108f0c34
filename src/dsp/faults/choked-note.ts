// Choked notes: what something touches fades before its partners do, and looks like a blow on wood.
// Its limits are chosen, no source; seeded choked notes test them.
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { centsBetween } from '../../domain/tuning/units';
import { reachOfPartial } from '../note/choose-note';
import type { TimedLine } from '../spectrum/line-course';

/** Multiples of the fundamental: the note's partials, and the octave below, which rings along. */
const ownOrders = [0.5, 1, 2, 3, 4];
/** Lower notes lose their lowest partials in the phone, Hz. */
const bassHz = 150;

const isOwn = (line: TimedLine, hz: number): boolean =>
  ownOrders.some((order) => Math.abs(centsBetween(order * hz, line.hz)) <= reachOfPartial);

/** A choked note is shorter than this time constant times the root of its frequency, √s … */
const chokedDecay = 2.4;
/** … and its own lines hold this share of the early energy, and fall by this much until later, when only its partners ring on, dB. */
const leastEarlyShareOfChoked = 0.38;
const leastPromptOfChokedDb = 6;

/** Whether the lines can be those of a note at `hz` that something touches: its own at first, then its partners'. */
export function isChokedNote(
  lines: readonly TimedLine[],
  { hz, early, settled }: TimedLine,
  decaySeconds: number,
): boolean {
  return (
    hz >= bassHz &&
    decaySeconds * Math.sqrt(hz) < chokedDecay &&
    dbOfAmplitude(early / Math.max(settled, 1e-12), 1e-9) >= leastPromptOfChokedDb &&
    share(lines, hz, (line) => line.early) >= leastEarlyShareOfChoked
  );
}

/** Part of all lines' energy that belongs to the note at `hz`, 0…1. */
function share(
  lines: readonly TimedLine[],
  hz: number,
  amplitude: (line: TimedLine) => number,
): number {
  let own = 0;
  let all = 1e-30;
  for (const line of lines) {
    const energy = amplitude(line) ** 2;
    all += energy;
    if (isOwn(line, hz)) own += energy;
  }
  return own / all;
}
