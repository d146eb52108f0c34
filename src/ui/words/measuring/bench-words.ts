// What the bench says.

import type { DisturbedNote } from '../../../domain/advice/disturbed-notes';
import type { BenchBlows, LoggedSet, PartialChange } from '../../../domain/bench/bench-course';
import type { PartialMadeWorse } from '../../../domain/bench/made-worse';
import type { PartialKind } from '../../../domain/pans/ring-partners';
import type { Reading } from '../../../domain/reading/reading';
import type { BlowFirmness, BlowPlace, BlowSide } from '../../../domain/records/blow-places';
import type { LoggedBlows } from '../../../domain/records/rack-records';
import { pluralOf } from '../count-words';
import { rowWords } from '../list-words';
import { signedCents, tenths, words } from '../words';

export const benchWords = {
  bench: 'Bench',
  putOnBench: 'Work on this note',
  missing: 'This note is not on this phone.',
  bareHint: 'No pan is open, so nothing is kept.',
  listen: 'Listen',
  pan: 'Pan',
  blows: 'Log blows',
  closeBlows: 'Close',
  keep: 'Keep this reading',
  nextCheck: (note: string) => `Next: check ${note}`,
  nextNote: (note: string) => `Next: ${note}`,
  nextBack: (note: string) => `Back to ${note}`,
  done: 'Done',
  opening: 'before',
  now: 'now',
  linesTitle: 'Each partial, before and now',
  sinceBlows: 'Since the last blows',
  noChange: 'no change',
  movedNothing: 'The blows moved nothing that can be measured.',
  ownTitle: 'Against its own fundamental',
  madeWorse: 'The work moved these away from their note',
  worse: (by: string) => `worse by ${by}`,
  notJudged: 'not judged',
  topWhy: 'Of a top note only the fundamental is judged.',
  nothingToCompare: 'Nothing that was measured both times.',
  surprise: 'This is not what the other sets on this pan say. It counts less.',
  heardBlows: (count: number) => `${pluralOf(count, 'One blow', `${count} blows`)} heard.`,
  unheardBlows: 'Blows logged.',
  noBlows: 'These were no blows',
  trail: 'The way since the bench was opened',
  trailHint:
    'Each mark is a strike, each arrow a set of blows. Between the dotted lines is within your limits.',
  trailOf: (partial: string, from: string, to: string, strikes: number) =>
    `${partial}: ${words.strikeCount(strikes)}, from ${from} to ${to} cents`,
  logTitle: {
    waiting: 'Where did the blows fall?',
    answered: 'Where did the blows before this strike fall?',
    unheard: 'Where will they fall, or where did they?',
  } satisfies Record<LoggedSet, string>,
  logFirst: 'Strike the note first. Then blows can be compared with it.',
  logHint:
    'Tap the place. The long way of the oval is the long way of the note. Not logging is fine.',
  places: {
    middle: 'middle',
    'long-ends': 'ends of the long axis',
    'short-ends': 'ends of the short axis',
    corners: 'corners between the axes',
    border: 'all around the border',
    'glancing-long': 'glancing along the long axis',
    'glancing-short': 'glancing along the short axis',
  } satisfies Record<BlowPlace, string>,
  /** On the drawing, where there is room for one short word. */
  spots: { middle: 'middle', 'long-ends': 'end', 'short-ends': 'side', corners: 'corner' },
  sides: { above: 'from above', below: 'from below' } satisfies Record<BlowSide, string>,
  sidesTitle: 'From which side',
  aboveIs: 'Above is the side that is played.',
  firmnesses: { light: 'light', firm: 'firm' } satisfies Record<BlowFirmness, string>,
  firmnessTitle: 'How firm',
  asLast: 'As last time',
  logged: 'Logged',
  repeats: 'Log the blows that are heard next the same way',
  cautionsTitle: 'Before you hammer',
  cautions: [
    'Wear hearing protection: hammering steel is loud. The phone does not measure how loud.',
    'Wear eye protection whenever metal is struck.',
    'Look for cracks first. A cracked pan is not played and not hammered.',
    'Without training, do not hammer. One wrong blow may be beyond repair, and a professional tuner can undo less than you think.',
  ],
  /** `first`: the notes of the same name; `then`: those that ring along less. */
  cover: (first: string, then: string) =>
    first === '' || then === ''
      ? `Damp ${first}${then} first.`
      : `Damp ${first} first; ${then} if you can.`,
  ringing: (notes: string) =>
    `Also heard: ${notes}. Those lines are not this note’s own: cover what rings along.`,
  checksTitle: 'To be checked again',
  checksWhy: (note: string) => `Work on ${note} may have moved these.`,
  checking: (note: string) => `Checking what the work on ${note} did`,
  toCheck: 'to be measured',
  noBefore: 'measured; there is no earlier reading',
  allChecked: 'All of them are checked.',
  neighbour: 'shares a border',
  ringPartner: (partial: string) => `rings with the ${partial}`,
  mark: 'Mark this note',
  crackedCaution: 'A cracked pan is not played and not hammered. Show it to a professional tuner.',
} as const;

/** The order of work on a pan. */
export const workPlanWords = {
  title: (first: string, count: number) =>
    count > 3 ? `Order of work: ${first} first, ${count} notes` : `Order of work: ${first}`,
  first: (notes: string) => `Order of work: first strike ${notes}`,
  why: 'Notes of one name together, from the highest down: so each octave meets the note above it. Change it as you like.',
  strikeFirst: 'Strike these first, three times each. One strike is not enough to hammer on.',
  strike: 'strike it three times',
  strikeAgain: 'worked on since it was measured: strike it three times',
  disturbs: (notes: string) => `may move ${notes}`,
  ringsWith: (notes: string) => `rings with ${notes}`,
  thenCheck: (notes: string) => `then check ${notes}`,
  earlier: (note: string) => `${note} earlier`,
  later: (note: string) => `${note} later`,
  leaveOut: (note: string) => `Leave ${note} out`,
  proposeAgain: 'Propose an order again',
} as const;

const partialWords: Readonly<Record<PartialKind, string>> = {
  fundamental: words.fundamental,
  octave: words.octave,
  twelfth: words.third.twelfth,
  'double-octave': words.third['double-octave'],
};

export const disturbedWords = (disturbed: DisturbedNote): string =>
  disturbed.kind === 'neighbour'
    ? benchWords.neighbour
    : benchWords.ringPartner(partialWords[disturbed.own]);

/** Name of a partial; the third by what it is in `reading`. */
export function partialName(partial: 0 | 1 | 2, reading: Pick<Reading, 'third'> | null): string {
  if (partial === 0) return words.fundamental;
  if (partial === 1) return words.octave;
  return reading?.third ? words.third[reading.third.kind] : words.thirdUnknown;
}

/** "raised by 4 ± 0.6", or "no change" where the change is smaller than its uncertainty: against a pitch that stays. */
export const benchChangeWords = ({ cents, within, isSure }: PartialChange): string =>
  isSure ? `${movedWord(cents)} by ${size(cents)} ± ${tenths(within)}` : benchWords.noChange;

const movedWord = (cents: number): string => (cents < 0 ? 'lowered' : 'raised');
const size = (cents: number): string => String(Math.round(Math.abs(cents)));

/** What blows did, largest first: "The blows raised the octave by 15, and the fundamental by 7." */
export function effectSentence(
  changes: readonly PartialChange[],
  reading: Pick<Reading, 'third'> | null,
): string {
  const sure = changes
    .filter(({ isSure, cents }) => isSure && Math.round(cents) !== 0)
    .sort((one, other) => Math.abs(other.cents) - Math.abs(one.cents));
  if (sure.length === 0) return benchWords.movedNothing;
  const those = (isDown: boolean): string => {
    const moved = sure.filter(({ cents }) => cents < 0 === isDown);
    if (moved.length === 0) return '';
    const named = moved.map(
      ({ partial, cents }) => `the ${partialName(partial, reading)} by ${size(cents)}`,
    );
    return `${isDown ? 'lowered' : 'raised'} ${namedWords(named)}`;
  };
  const isDownFirst = (sure[0]?.cents ?? 0) < 0;
  const parts = [those(isDownFirst), those(!isDownFirst)].filter((each) => each !== '');
  return `The blows ${parts.join(', and ')}.`;
}

const namedWords = (named: readonly string[]): string =>
  named.length < 2 ? named.join('') : `${named.slice(0, -1).join(', ')}, and ${named.at(-1)}`;

/** How a partial of a note lies against its own fundamental, before and after blows: "octave −2 → +7". */
export const ownChangeWords = (name: string, before: number, now: number): string =>
  `${name} ${signedCents(before)} → ${signedCents(now)}`;

export const madeWorseWords = ({ partial, before, now }: PartialMadeWorse): string =>
  ownChangeWords(partial === 'octave' ? words.octave : words.third[partial], before, now);

/** The hint about a top note that is in tune, and whose partials the work moved away. */
export const topNoteWords = (worse: readonly PartialMadeWorse[]): string =>
  worse.length === 0 ? '' : `${benchWords.madeWorse}: ${rowWords(worse.map(madeWorseWords))}.`;

/** "ends of the long axis, from above, light". */
export const loggedWords = ({ place, side, firmness }: LoggedBlows): string =>
  rowWords([benchWords.places[place], benchWords.sides[side], benchWords.firmnesses[firmness]]);

export const blowsHeard = ({ count }: BenchBlows): string =>
  count === null ? benchWords.unheardBlows : benchWords.heardBlows(count);
