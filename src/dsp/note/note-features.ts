// What speaks for a note having been struck, in numbers: the score that weighs them was fitted (`ear-weights`).
// Places and ranges are chosen, no source.
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { centsBetween } from '../../domain/tuning/units';
import type { TimedLine } from '../spectrum/line-course';
import type { SpectralLook } from '../spectrum/spectral-look';
import type { SpectralLine } from '../spectrum/strike-spectrum';

/** A note's partials, and how far they may lie from their places, cents. */
const orders = [1, 2, 3, 4] as const;
const reachOfPartial = 70;
/** A line this near to a stronger one may be the skirt of its glide, cents: hard strokes begin 95 cents sharp. */
const skirtCents = 200;
/** A level is looked for this far around its place, cents; anything fainter counts as this, dB. */
const reach = 40;
const faintest = -45;

export const noteFeatureNames = [
  ...['at1', 'at2', 'at3', 'at4', 'at5'],
  ...['first1', 'first2', 'first3', 'first4'],
  ...['half', 'threeHalves', 'third', 'quarter', 'fourThirds', 'fiveHalves'],
  ...['firstHalf', 'firstThreeHalves', 'firstThird', 'firstFourThirds'],
  ...['share', 'firstShare', 'unshared', 'firstUnshared', 'stray', 'firstStray'],
  ...['beside', 'firstBeside', 'below', 'firstBelow'],
  ...['prompt', 'promptOver', 'promptAgainstOctave', 'promptAgainstHalf'],
  ...['touchOctave', 'touchHalf', 'wasThere', 'notAdded'],
  ...['octaveAway', 'fourthAway', 'noOctave', 'noThird', 'faint', 'offGrid'],
  ...['repeats', 'repeatsLate', 'repeatsHalf', 'repeatsLateHalf'],
  ...['late1', 'late2', 'lateHalf', 'lateBeside', 'lateBelow', 'lateShare'],
  ...['trendOctave', 'trendHalf', 'trendTwelfth', 'strongest', 'strongestFirst'],
  ...['high', 'low'],
  // Levels at further places: a soft stroke leaves a partner's octave loud and its upper partials silent.
  ...['twoThirds', 'threeQuarters', 'onFourThirds', 'onFiveThirds', 'sevenHalves'],
  ...['at6', 'at7', 'at8', 'on5'],
  ...['firstTwoThirds', 'firstThreeQuarters', 'firstOnFourThirds', 'firstOnFiveThirds'],
  ...['firstSevenHalves', 'first5', 'first6', 'first7', 'first8'],
  ...['octaveFar', 'octaveFarther', 'fourthFar', 'fourthFarther'],
] as const;
export type NoteFeature = (typeof noteFeatureNames)[number];

const within = (value: number, low: number, high: number): number =>
  Math.max(low, Math.min(high, value));
const decibel = (ratio: number): number => dbOfAmplitude(ratio, 1e-7);

export interface NoteEvidence {
  readonly early: SpectralLook;
  readonly main: SpectralLook;
  /** When the glide of a hard stroke is over. */
  readonly late: SpectralLook;
  /** Courses of the lines of `main`, strongest first. */
  readonly timed: readonly TimedLine[];
  /** How well the sound repeats itself after so many s, in its first moments and later. */
  readonly repeats: (seconds: number) => number;
  readonly repeatsLate: (seconds: number) => number;
}

/** The features of the note whose fundamental is `line`, `offGrid` cents from its place, in the order of the names. */
export function noteFeatures(
  { early, main, late, timed, repeats, repeatsLate }: NoteEvidence,
  line: TimedLine,
  offGrid: number,
): readonly number[] {
  const { hz } = line;
  const levelIn = (look: SpectralLook, ratio: number): number =>
    within(decibel(look.near(ratio * hz, reach) / look.loudest), faintest, 0) / 10;
  const at = (ratio: number): number => levelIn(main, ratio);
  const first = (ratio: number): number => levelIn(early, ratio);
  const later = (ratio: number): number => levelIn(late, ratio);
  const octave = lineNear(timed, 2 * hz);
  const half = lineNear(timed, hz / 2);
  const third = lineNear(timed, 3 * hz);
  const fourth = lineNear(timed, 4 * hz);
  const strongest = timed[0] ?? line;
  const [share, stray] = explained(main.lines, hz);
  const [firstShare, firstStray] = explained(early.lines, hz);
  const touch = (other: TimedLine | null): number =>
    other ? within(decibel(other.touch / Math.max(line.touch, 1e-9)), -25, 25) / 10 : -2.5;
  const repeated = repeats(1 / hz);
  const repeatedLate = repeatsLate(1 / hz);
  const octaves = Math.log2(hz / 440);
  const octaveAway = octave ? Math.abs(centsBetween(2 * hz, octave.hz)) / reachOfPartial : 0.4;
  const fourthAway = fourth ? Math.abs(centsBetween(4 * hz, fourth.hz)) / reachOfPartial : 0.4;
  const values: Record<NoteFeature, number> = {
    at1: at(1),
    at2: at(2),
    at3: at(3),
    at4: at(4),
    at5: Math.max(at(5), at(6)),
    first1: first(1),
    first2: first(2),
    first3: first(3),
    first4: first(4),
    half: at(1 / 2),
    threeHalves: at(3 / 2),
    third: Math.max(at(1 / 3), at(2 / 3)),
    quarter: Math.max(at(1 / 4), at(3 / 4)),
    fourThirds: Math.max(at(4 / 3), at(5 / 3)),
    fiveHalves: at(5 / 2),
    firstHalf: first(1 / 2),
    firstThreeHalves: first(3 / 2),
    firstThird: Math.max(first(1 / 3), first(2 / 3)),
    firstFourThirds: Math.max(first(4 / 3), first(5 / 3)),
    share,
    firstShare,
    unshared: -Math.log10(0.02 + 1 - share),
    firstUnshared: -Math.log10(0.02 + 1 - firstShare),
    stray,
    firstStray,
    beside: besideLevel(main.lines, line.hz),
    firstBeside: besideLevel(early.lines, line.hz),
    below: levelBelow(main.lines, hz, main.near(hz, reach)),
    firstBelow: levelBelow(early.lines, hz, early.near(hz, reach)),
    prompt: promptness(line),
    promptOver: promptness(line) - promptness(strongest),
    promptAgainstOctave: octave ? promptness(line) - promptness(octave) : 0,
    promptAgainstHalf: half ? promptness(line) - promptness(half) : 1,
    touchOctave: touch(octave),
    touchHalf: touch(half),
    wasThere: within(decibel(line.before / Math.max(line.settled, 1e-9)), -30, 10) / 10,
    notAdded: within(decibel(line.before / Math.max(line.added, 1e-9)), -10, 20) / 10,
    octaveAway,
    fourthAway,
    noOctave: octave ? 0 : 1,
    noThird: third || fourth ? 0 : 1,
    faint: decibel(line.settled / main.loudest) < -30 ? 1 : 0,
    offGrid: (offGrid / 50) ** 2,
    repeats: repeated,
    repeatsLate: repeatedLate,
    repeatsHalf: repeated - repeats(0.5 / hz),
    repeatsLateHalf: repeatedLate - repeatsLate(0.5 / hz),
    late1: later(1),
    late2: later(2),
    lateHalf: later(1 / 2),
    lateBeside: besideLevel(late.lines, hz),
    lateBelow: levelBelow(late.lines, hz, late.near(hz, reach)),
    lateShare: explained(late.lines, hz)[0],
    trendOctave: octave ? trend(line, octave) : 0,
    trendHalf: half ? trend(line, half) : 0,
    trendTwelfth: third ? trend(line, third) : 0,
    strongest: line === strongest ? 1 : 0,
    strongestFirst: first(1) > -0.05 ? 1 : 0,
    high: Math.max(0, octaves - 0.5) ** 2,
    low: Math.max(0, -octaves - 0.5) ** 2,
    twoThirds: at(2 / 3),
    threeQuarters: at(3 / 4),
    onFourThirds: at(4 / 3),
    onFiveThirds: at(5 / 3),
    sevenHalves: at(7 / 2),
    at6: at(6),
    at7: at(7),
    at8: at(8),
    on5: at(5),
    firstTwoThirds: first(2 / 3),
    firstThreeQuarters: first(3 / 4),
    firstOnFourThirds: first(4 / 3),
    firstOnFiveThirds: first(5 / 3),
    firstSevenHalves: first(7 / 2),
    first5: first(5),
    first6: first(6),
    first7: first(7),
    first8: first(8),
    octaveFar: Math.max(0, octaveAway - 0.3),
    octaveFarther: Math.max(0, octaveAway - 0.6),
    fourthFar: Math.max(0, fourthAway - 0.3),
    fourthFarther: Math.max(0, fourthAway - 0.6),
  };
  return noteFeatureNames.map((name) => values[name]);
}

/** How much of its settled level a line had at once, in units of 10 dB. */
export const promptness = (line: TimedLine): number =>
  within(decibel(line.early / Math.max(line.settled, 1e-9)), -20, 6) / 10;

/**
 * How much `other` grows against `line` from the touch on, in units of 10 dB: an octave blooms, a lower note rings on.
 */
const trend = (line: TimedLine, other: TimedLine): number =>
  within(
    decibel(other.settled / Math.max(line.settled, 1e-9)) -
      decibel(other.touch / Math.max(line.touch, 1e-9)),
    -15,
    15,
  ) / 10;

/** The strongest line within reach of `hz`. */
function lineNear(lines: readonly TimedLine[], hz: number): TimedLine | null {
  return lines.find((line) => Math.abs(centsBetween(hz, line.hz)) <= reachOfPartial) ?? null;
}

/**
 * Part of the lines' energy that the partials of `hz` explain, 0…1, and the strongest other line against them, in units
 * of 10 dB.
 */
function explained(lines: readonly SpectralLine[], hz: number): readonly [number, number] {
  let own = 1e-20;
  let other = 0;
  let strongestOwn = 1e-10;
  let strongestOther = 1e-10;
  for (const line of lines) {
    const away = (order: number): number => Math.abs(centsBetween(order * hz, line.hz));
    const isOwn = orders.some((order) => away(order) <= reachOfPartial);
    // The skirt that a partial's glide leaves belongs to the partial.
    const isSkirt =
      !isOwn &&
      orders.some((order) => away(order) <= skirtCents) &&
      lines.some(
        (each) =>
          each.amplitude > 2 * line.amplitude &&
          Math.abs(centsBetween(each.hz, line.hz)) <= skirtCents &&
          orders.some((order) => Math.abs(centsBetween(order * hz, each.hz)) <= reachOfPartial),
      );
    const energy = line.amplitude ** 2;
    if (isOwn || isSkirt) {
      own += energy;
      strongestOwn = Math.max(strongestOwn, line.amplitude);
    } else {
      other += energy;
      strongestOther = Math.max(strongestOther, line.amplitude);
    }
  }
  return [own / (own + other), within(decibel(strongestOther / strongestOwn), -40, 20) / 10];
}

/** The strongest line about a semitone from `hz` against the one there, in units of 10 dB. */
function besideLevel(lines: readonly SpectralLine[], hz: number): number {
  let own = 1e-10;
  let beside = 1e-10;
  for (const line of lines) {
    const away = Math.abs(centsBetween(hz, line.hz));
    if (away <= 15) own = Math.max(own, line.amplitude);
    else if (away <= 220) beside = Math.max(beside, line.amplitude);
  }
  return within(decibel(beside / own), -30, 20) / 10;
}

/** The strongest line well below `hz` against the `level` there, in units of 10 dB. */
function levelBelow(lines: readonly SpectralLine[], hz: number, level: number): number {
  let below = 1e-10;
  for (const line of lines) if (line.hz < 0.93 * hz) below = Math.max(below, line.amplitude);
  return within(decibel(below / Math.max(level, 1e-10)), -30, 20) / 10;
}
