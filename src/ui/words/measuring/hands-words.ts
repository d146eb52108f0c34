// What is said about keys, the far view and the voice.

import type { SuggestedBlows } from '../../../domain/advice/advice';
import type { BenchBlows } from '../../../domain/bench/bench-course';
import type { BlowPlace } from '../../../domain/records/blow-places';
import type {
  HandAction,
  HandKey,
  HeadsetButton,
  SettledSign,
} from '../../../domain/settings/hands-settings';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { Verdict } from '../../../domain/tuning/verdict';
import { pluralOf } from '../count-words';
import { rowWords } from '../list-words';
import { verdictWords, walkingWords, words } from '../words';
import { benchWords, blowsHeard } from './bench-words';

export const handsWords = {
  title: 'Keys for busy hands',
  why: 'Any key of a keyboard, of a Bluetooth remote or of a headset can keep a reading and move on. Some phones also give their volume keys.',
  actions: { keep: 'Keep the reading', next: 'Next note' } satisfies Record<HandAction, string>,
  set: (action: string) => `Choose a key: ${action}`,
  waiting: 'Press the key or the button now.',
  cancel: 'Never mind',
  takeAway: (action: string) => `Remove the key: ${action}`,
  none: 'no key',
  bound: (action: string, key: string) => `${action}: ${key}`,
  refused: 'This key is needed to find the way around. Press another one.',
  only: 'While the bench or a round is open, a key that is set here does nothing else. In a round, readings are kept by themselves.',
  voice: 'On the bench, a voice says the verdict when a note is read',
  settledSign: 'When a note is settled, besides the screen',
  settledSigns: {
    nothing: 'nothing',
    buzz: 'a short buzz',
    tone: 'a short high tone',
  } satisfies Record<SettledSign, string>,
  settledWhy: 'Never while a strike is measured. Not every phone can buzz.',
  noVoice: 'This phone has no voice of its own.',
  linesTitle: 'Each partial, before the last blows and now',
  was: (cents: string) => `was ${cents}`,
  worse: 'worse,',
  mayMove: (notes: string) => `May disturb ${notes}.`,
  cameOn: 'The microphone came on by itself.',
  caution: 'Protect ears and eyes. A professional can undo less than you think. All cautions',
  /** In one line of a phone. */
  places: {
    middle: 'middle',
    'long-ends': 'ends of the long axis',
    'short-ends': 'ends of the short axis',
    corners: 'corners',
    border: 'all around the border',
    'glancing-long': 'glancing, long axis',
    'glancing-short': 'glancing, short axis',
  } satisfies Record<BlowPlace, string>,
  stop: 'Stop',
  strike: (note: string) => `Strike ${note}`,
  sayWhere: 'Where did they fall?',
  far: words.far,
  leaveFar: 'Tap or press any key to go back',
  kept: 'Kept.',
} as const;

const headsetWords: Readonly<Record<HeadsetButton, string>> = {
  play: 'play button of the headset',
  forward: 'forward button of the headset',
  back: 'back button of the headset',
};

/** A key as people call it: "KeyK" is "K", "AudioVolumeUp" is "Audio Volume Up". */
export function keyWords(key: HandKey): string {
  if (key.kind === 'headset') return headsetWords[key.button];
  if (key.code.trim() === '') return 'Space';
  return key.code.replace(/^(Key|Digit)(?=.)/, '').replace(/(?<=[a-z])(?=[A-Z0-9])/g, ' ');
}

/** What the voice says: "D5, octave flat, 6". A walking note has no verdict. */
export function spokenWords(
  note: MidiNote,
  verdict: Verdict,
  walking: { readonly centsPerStrike: number } | null,
): string {
  if (walking) return `${spokenNote(note)}. ${walkingWords(walking.centsPerStrike).says}`;
  const { lines, number } = verdictWords(verdict);
  return rowWords([spokenNote(note), lines.join(' '), number ?? '']);
}

/** A voice would leave the sign out. */
const spokenNote = (note: MidiNote): string =>
  displayName(note).replace('♯', ' sharp ').replace('♭', ' flat ');

/** The lines of the far view: the words, and the number as a line of its own. */
export function farLines(verdict: Verdict): readonly string[] {
  const { lines, number } = verdictWords(verdict);
  return number === null ? lines : [...lines, number];
}

/** "3 light, from above"; with "Try" where nobody knows what it will do. */
export function stepWords({ aim, count, firmness, side }: SuggestedBlows): string {
  const blows = `${count} ${benchWords.firmnesses[firmness]}, ${benchWords.sides[side]}`;
  return aim === 'try' ? `Try ${blows}` : blows;
}

/** "2 of 3 blows heard." `suggested`: how many, or null where nothing was suggested. */
export function blowsSoFar(blows: BenchBlows, suggested: number | null): string {
  const { count } = blows;
  if (count === null || suggested === null) return blowsHeard(blows);
  return count > suggested
    ? `${blowsHeard(blows)} Suggested: ${suggested}.`
    : `${count} of ${suggested} ${pluralOf(suggested, 'blow', 'blows')} heard.`;
}
