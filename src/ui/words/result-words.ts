// What the result of a round says, and a pan's page about its newest one.

import type { PartnerBeat } from '../../domain/pans/partner-beats';
import type { NotePartial } from '../../domain/pans/ring-partners';
import type { JudgedNote } from '../../domain/reading/judge-note';
import type { NoteStanding } from '../../domain/reading/note-standing';
import type { QuickVerdict } from '../../domain/reading/quick-verdict';
import type { RoundConditions, RoundWay, Standing } from '../../domain/records/rack-records';
import type { RoundResult } from '../../domain/rounds/round-result';
import { displayName } from '../../domain/tuning/note-names';
import type { PanPitch } from '../../domain/tuning/pan-pitch';
import type { Hertz } from '../../domain/tuning/units';
import { centsWords, pluralOf } from './count-words';
import { noteListWords, rowWords } from './list-words';
import { nowWords, withoutWorkSign } from './now-words';
import { partialSigns } from './standing-words';
import { directionWord, signedCents, tenths, words } from './words';

export const resultWords = {
  result: 'Result',
  ways: { guided: 'guided round', free: 'free round', quick: 'quick round' } satisfies Record<
    RoundWay,
    string
  >,
  panPitch: 'Pan pitch',
  noPanPitch: 'Too few notes were heard to tell the pitch of the pan.',
  judgedAgainst: 'Judge the notes against',
  references: { band: 'The band', pan: 'The pan itself' },
  worstFirst: 'Worst first',
  allGood: 'Nothing to say against any note that was heard.',
  otherNotes: (count: number) => pluralOf(count, 'One other note', `The other ${count} notes`),
  partnersTitle: 'Ring partners that beat',
  partnersNone: 'No ring partners are heard to beat.',
  partnersMore: (count: number) => pluralOf(count, 'One more', `${count} more`),
  quickTitle: 'One strike each says',
  quick: {
    out: 'clearly out',
    'three-strikes': 'strike these three times',
    fine: 'clearly fine',
  } satisfies Record<QuickVerdict, string>,
  provisional: 'Provisional.',
  notFinished: 'This round was not finished. It shows what was heard.',
  signs: 'Numbers: cents of the fundamental.',
  octaveSign: '8ve: of the octave.',
  twelfthSign: '12th: of the twelfth.',
  doubleOctaveSign: '15th: of the double octave.',
  table: 'Readings as a table (CSV)',
  tableMade: {
    shared: 'Handed over.',
    downloaded: 'Saved among the downloads.',
    dismissed: 'Not sent.',
    again: 'Tap once more.',
    failed: 'The table could not be handed over.',
  },
  tableName: (pan: string, day: string) => `${pan} ${day} readings.csv`,
  toPan: 'To the pan',
} as const;

const conditionOf: Readonly<Record<Standing, string>> = {
  settled: 'The pan had settled.',
  unloaded: 'The pan was just unloaded.',
  sun: 'The pan was in the sun or warm.',
};

/** "The pan was just unloaded. Air 27 °C."; empty where nobody said. */
export const conditionWords = ({ standing, temperature }: RoundConditions): string =>
  [
    standing === null ? '' : conditionOf[standing],
    temperature === null ? '' : `Air ${degrees(temperature)}.`,
  ]
    .filter((each) => each !== '')
    .join(' ');

/** "27 °C", "−3.5 °C". */
export const degrees = (celsius: number): string => `${String(celsius).replace('-', '−')} °C`;

/** The big line of a pan: what stands in the way of playing it, and of how many notes. */
export function headlineWords(standings: Readonly<Record<NoteStanding, number>>): {
  readonly big: string;
  readonly small: string;
} {
  const { good, playable, out, avoid, unread } = standings;
  const heard = good + playable + out + avoid;
  const small = unread > 0 ? `${heard} of ${heard + unread} heard` : `${heard} heard`;
  if (heard === 0) return { big: 'not heard', small: '' };
  if (avoid > 0 && out > 0) return { big: `${avoid} to avoid, ${out} out`, small };
  if (avoid > 0) return { big: `${avoid} to avoid`, small };
  if (out > 0) return { big: `${out} out`, small };
  const all = unread > 0 ? small : pluralOf(heard, 'its only note', `all ${heard} notes`);
  return playable > 0 ? { big: 'playable', small: all } : { big: 'good', small: all };
}

/** "A = 441.5 Hz". */
export const a4Words = (a4: Hertz): string =>
  // Never broken between the lines.
  `A\u00a0=\u00a0${Number(a4.toFixed(1))}\u00a0Hz`;

/** Where the pan lies against the band: "6 cents sharp of the band, 440 Hz". */
export function againstBandWords(pitch: PanPitch, bandA4: Hertz): string {
  const whole = Math.round(Math.abs(pitch.cents));
  const band = `the band (${a4Words(bandA4)})`;
  if (whole === 0) return `right on ${band}`;
  return `${centsWords(whole)} ${directionWord(pitch.cents)} of ${band}`;
}

/** How far the notes lie from the pan pitch. */
export const spreadWords = ({ spread }: PanPitch): string => {
  const whole = Math.max(1, Math.round(spread));
  return `Spread ${centsWords(whole)}.`;
};

/** What the fundamentals were judged against, when it is not what was asked for. */
export const referenceMissing =
  'Too few notes for a pan pitch, so they are judged against the band.';

/** "fundamental −16, octave +2, double octave −1". */
export function partialsLine({ fundamental, octave, octaveRival, third }: JudgedNote): string {
  const parts = [`${words.fundamental} ${signedCents(fundamental.cents)}`];
  if (octave && octaveRival) parts.push(`${words.octave} ${words.unsure}`);
  else if (octave) parts.push(`${words.octave} ${signedCents(octave.centsFromOwn)}`);
  if (third) parts.push(`${words.third[third.kind]} ${signedCents(third.centsFromOwn)}`);
  return rowWords(parts);
}

/** What the numbers on the map are, and the signs before some of them; `texts` are those of its notes. */
export function signWords(texts: readonly string[]): string {
  const isNumber = (text: string): boolean => /^[−+]?\d+$/.test(withoutWorkSign(text));
  const has = (sign: string): boolean => texts.some((text) => text.startsWith(`${sign} `));
  return [
    texts.some(isNumber) ? resultWords.signs : '',
    has(partialSigns.octave) ? resultWords.octaveSign : '',
    has(partialSigns.twelfth) ? resultWords.twelfthSign : '',
    has(partialSigns['double-octave']) ? resultWords.doubleOctaveSign : '',
    texts.some((text) => withoutWorkSign(text) !== text) ? nowWords.workSign : '',
  ]
    .filter((each) => each !== '')
    .join(' ');
}

/** Cents to a tenth with a sign: "−0.4", "+12.0", "0.0". */
export const signedTenths = (cents: number): string =>
  `${Math.round(cents * 10) === 0 ? '' : cents < 0 ? '−' : '+'}${tenths(cents)}`;

const partialOf = ({ note, partial }: NotePartial): string =>
  partial === 'fundamental'
    ? displayName(note)
    : `${partial === 'octave' ? words.octave : words.third[partial]} of ${displayName(note)}`;

/** Who beats, how far apart they are, and how fast: "D4 and D5", "9 cents", "3.1 beats a second". */
export const beatWords = ({ pair: { low, high }, cents, beatHz }: PartnerBeat) => ({
  who: noteListWords([low.note, high.note]),
  how: `${partialOf(low)} against ${partialOf(high)}`,
  apart: centsWords(cents),
  beats: `${beatHz.toFixed(1)} beats a second`,
});

/** The notes of a quick round by what one strike could say about them, worst first. */
export function quickGroups({ notes, worst }: RoundResult) {
  const kinds: readonly QuickVerdict[] = ['out', 'three-strikes', 'fine'];
  const worstFirst = [...worst, ...notes.filter((note) => !worst.includes(note))];
  return kinds
    .map((kind) => ({ kind, notes: worstFirst.filter((note) => note.quick === kind) }))
    .filter((group) => group.notes.length > 0);
}
