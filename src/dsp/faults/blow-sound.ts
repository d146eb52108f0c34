// Tells blows and voices from a struck note by whose energy it is: a note's own partials carry nearly all of it.
import { centsBetween } from '../../domain/tuning/units';
import { reachOfPartial } from '../note/choose-note';
import type { TimedLine } from '../spectrum/line-course';

/** The note's partials, and the octave below that rings along. */
const ownOrders = [0.5, 1, 2, 3, 4];
/**
 * Least part of the energy in the note's own partials after the attack. Of 300 seeded scenes with six sympathetic
 * notes the lowest is 0.73, real recordings have 0.95; hammer blows, rims and voices lie between 0.05 and 0.9.
 */
const leastShare = 0.57;
/** … or this, if nearly all of the early energy is its own: what rings along outlasts the shortest notes. */
const leastShareOfFaded = 0.35;
const earlyShareOfFaded = 0.95;
/** A bass note's lowest partials are lost in the phone; less is asked of it. */
const bassHz = 150;
const leastShareOfBass = 0.3;
/** The same in the first moments, where a blow's own modes are loud. */
const leastEarlyShare = 0.28;
/** A note shorter than this time constant times the root of its frequency (√s) is choked, or no note … */
const shortDecay = 1.9;
/** … unless nearly all of its early energy is its own: true high notes can be as short. */
const leastEarlyShareOfShort = 0.7;
/** Early against settled level of the fundamental, dB: a voice is not there yet. */
const leastPromptDb = -8.5;
/** Level of the same line just before the onset against just after, dB: it was already there … */
const mostBeforeDb = -5;
/** … and was not struck again if less was added to it than this part of it, dB. */
const leastAddedDb = -3;

/**
 * The note's own partials at the onset against the peak of all sound, dB: as the first moments have them, and as the
 * measuring window has them, led back along the decay. Of 549 strikes (scenes, played pans, basses, real recordings)
 * the lowest are −7.8 and −3.8; where a blow lets a note ring they lie about −10 and −19.
 */
const leastAtOnceDb = -10;
const leastLedBackDb = -8;
/** A short note's decay leads back too far: it must be there at once … */
const shortestLedBack = 2;
const leastAtOnceOfShortDb = 0;
/** … and not have been louder than all there was. */
const mostLedBackDb = 11;
/** A note this loud in the measuring window needs no leading back: echoes can spoil its decay. */
const leastSettledDb = -12;
/** The measuring window's middle after the onset, as far as its energy goes, s. */
const middleSeconds = 0.15;

const decibel = (ratio: number): number => 20 * Math.log10(Math.max(ratio, 1e-9));

/**
 * Whether the lines of a sound (amplitudes linear) are those of a note at `hz` struck just now that fades with the
 * time constant `decaySeconds`.
 */
export function isStruckNote(
  lines: readonly TimedLine[],
  fundamental: TimedLine,
  decaySeconds: number,
): boolean {
  const { hz, early, settled, before, added } = fundamental;
  const isBass = hz < bassHz;
  const settledShare = share(lines, hz, (line) => line.settled);
  const earlyShare = share(lines, hz, (line) => line.early);
  const leastOfNote = earlyShare < earlyShareOfFaded ? leastShare : leastShareOfFaded;
  if (settledShare < (isBass ? leastShareOfBass : leastOfNote)) return false;
  if (decibel(early / Math.max(settled, 1e-12)) < leastPromptDb) return false;
  const isOld = decibel(before / Math.max(early, 1e-12)) > mostBeforeDb;
  if (isOld && decibel(added / Math.max(before, 1e-12)) < leastAddedDb) return false;
  if (isBass) return true;
  const isShort = decaySeconds * Math.sqrt(hz) < shortDecay;
  return earlyShare >= (isShort ? leastEarlyShareOfShort : leastEarlyShare);
}

/**
 * Whether a note at `hz` that fades with the time constant `decaySeconds` makes up the loudest moment of its sound,
 * whose largest sample is `peak` (linear). A hammer is far louder than what it lets ring.
 */
export function isAsLoudAsItsOnset(
  lines: readonly TimedLine[],
  hz: number,
  decaySeconds: number,
  peak: number,
): boolean {
  const own = lines.filter((line) => isOwn(line, hz));
  const sum = (amplitude: (line: TimedLine) => number): number =>
    decibel(own.reduce((all, line) => all + amplitude(line), 0) / Math.max(peak, 1e-9));
  const atOnce = sum((line) => line.early);
  const settled = sum((line) => line.settled);
  if (atOnce < leastAtOnceDb || settled >= leastSettledDb) return atOnce >= leastAtOnceDb;
  const ledBack = settled + decibel(Math.exp(middleSeconds / decaySeconds));
  const isShort = hz >= bassHz && decaySeconds * Math.sqrt(hz) < shortestLedBack;
  return isShort
    ? atOnce >= leastAtOnceOfShortDb && ledBack <= mostLedBackDb
    : ledBack >= leastLedBackDb;
}

const isOwn = (line: TimedLine, hz: number): boolean =>
  ownOrders.some((order) => Math.abs(centsBetween(order * hz, line.hz)) <= reachOfPartial);

/** A choked note is shorter than this time constant times the root of its frequency, √s … */
const chokedDecay = 2.4;
/** … and has this part of the early energy, and this much more of it than later, when the ring partners go on, dB. */
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
    decibel(early / Math.max(settled, 1e-12)) >= leastPromptOfChokedDb &&
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
