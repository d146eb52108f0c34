// What the sheet for the tuner says, on the screen, on paper and in the saved page.

import type { LoggedBlows, RoundWay, Standing, Taking } from '../../../domain/records/rack-records';
import type { NoteBlows, SheetNote, SheetRound } from '../../../domain/sheet/sheet';
import { displayName } from '../../../domain/tuning/note-names';
import type { Reference } from '../../../domain/tuning/reference';
import type { ToleranceSet } from '../../../domain/tuning/tolerances';
import { counted } from '../count-words';
import { dayWords, momentWords } from '../day-words';
import { listWords, rowWords } from '../list-words';
import { degrees, signedTenths } from '../result-words';
import { partialSigns, standingTitle } from '../standing-words';
import { words } from '../words';
import { signNames } from './sheet-event-words';

export const sheetWords = {
  title: 'Sheet for the tuner',
  made: (day: string) => `For the tuner · made ${day}`,
  noRound:
    'This pan has not been heard yet. Take a full round first: without one the sheet says little.',
  startRound: 'Start a round',
  reading: 'Reading the rounds',
  print: 'Print or save as PDF',
  savePage: 'Save as a page',
  pageMade: {
    shared: 'Handed over.',
    downloaded: 'Saved among the downloads. It opens in any browser, without a network.',
    dismissed: 'Not sent.',
    again: 'Tap once more.',
    failed: 'The page could not be handed over.',
  },
  pageName: (pan: string, day: string) => `${pan} ${day} sheet.html`,
  preview: 'The sheet',
  request: 'Before you print',
  wanted: 'What is wanted',
  wantedHint: 'For example: fine tuning, and look at the crack at C4.',
  wantedBy: 'By when',
  contact: 'Contact',
  contactHint: 'A name and a telephone number. This phone keeps it for all its sheets.',
  family: 'Kind',
  layout: 'Layout',
  owner: 'Owner',
  maker: 'Maker',
  serial: 'Serial',
  finish: 'Finish',
  remarks: 'Remarks',
  bandPitch: 'To be tuned to',
  panPitch: 'Pan pitch',
  noPanPitch: 'too few notes heard',
  heard: 'Heard',
  notHeard: 'not yet',
  air: 'Air',
  airUnknown: 'not measured',
  photoAlt: 'The pan',
  table: 'Note by note',
  columns: {
    note: 'Note',
    state: 'State',
    hz: 'f1 Hz',
    cents: 'cents',
    sigma: '±',
    octave: 'octave',
    third: 'third',
    ring: 'ring s',
    strikes: 'strikes',
    spread: 'spread',
    day: 'day',
    moved: 'moved',
    remarks: 'remarks',
  },
  or: 'or',
  magnet: 'magnet on it: take it off',
  onBench: 'measured on the bench',
  beforeTuning: (day: string) =>
    `Measured before the tuning of ${day}: the pan is not like this any more. Take a full round.`,
  notMeasured: 'hammered since, not measured',
  happened: 'What happened',
  nothingHappened: 'Nothing was written down.',
  earlier: (count: number) => `${count} more: see the pan’s own file.`,
  blows: 'Blows it was given',
  noBlows: 'None were logged.',
  stopgaps: 'Still on the pan',
  changes: 'What changed since',
  noTuning: 'No professional tuning is written down. Counted from the first round kept here',
  noChanges: 'No other round has been taken since, so nothing can be compared.',
  notComparable: 'There is no earlier round to compare with.',
  movedMost: 'Moved by themselves, most first (cents)',
  noneMoved: 'No note moved by itself.',
  how: 'How it was measured',
  howSigns:
    'Signs of damage: each note against the notes around it and the last round before the knock. choked: it stops ringing far too soon. octave doubled: two lines where there was one.',
  answer: 'For the tuner’s remarks',
  answerLines: ['Done', 'Remarks', '', 'Next visit'],
} as const;

/** "3 May 2026, 18:05, guided round". */
export const roundLine = ({ at, way }: SheetRound): string => `${momentWords(at)}, ${ways[way]}`;

const ways: Readonly<Record<RoundWay, string>> = {
  guided: 'guided round',
  free: 'free round',
  quick: 'quick round, one strike a note',
};

const standings: Readonly<Record<Standing, string>> = {
  settled: 'the pan had settled',
  unloaded: 'the pan was just unloaded: provisional',
  sun: 'the pan was in the sun or warm: provisional',
};

/** "26 °C, the pan had settled". */
export const airLine = ({ temperature, standing }: SheetRound): string =>
  rowWords([
    temperature === null ? sheetWords.airUnknown : degrees(temperature),
    standing === null ? '' : standings[standing],
  ]);

/** The third partial of a note: "15th −3.1". */
export const thirdCell = ({ measured }: SheetNote): string =>
  measured?.third
    ? `${partialSigns[measured.third.kind]} ${signedTenths(measured.third.cents)}`
    : '';

/** The octave, or both lines where nobody knows which it is: "−1.2 or +9.8". */
export function octaveCell({ measured }: SheetNote): string {
  if (!measured || measured.octave === null) return '';
  const own = signedTenths(measured.octave);
  return measured.octaveRival === null
    ? own
    : `${own} ${sheetWords.or} ${signedTenths(measured.octaveRival)}`;
}

/** What the numbers of a row do not say. */
export function remarksCell(note: SheetNote): string {
  const { measured, standing, reason, stopgap } = note;
  const walk = measured?.walking;
  const title =
    standing === 'good' || reason.kind === 'walking' || reason.kind === 'unread'
      ? ''
      : standingTitle(note);
  return [
    title,
    signsOf(note, title),
    walk ? `walking ${signedTenths(walk.centsPerStrike)} a strike` : '',
    measured?.isInferred ? words.inferred : '',
    note.benchAt === null ? '' : sheetWords.onBench,
    note.work === 'not-measured' ? sheetWords.notMeasured : '',
    stopgap === 'magnet' ? sheetWords.magnet : '',
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** Without those that the row says anyway: that it walks and how far, or that somebody marked it so. */
function signsOf({ signs: { kinds, areEarlier }, measured }: SheetNote, title: string): string {
  const said = areEarlier
    ? kinds
    : kinds.filter(
        (kind) => signNames[kind] !== title && !(kind === 'walking' && measured?.walking),
      );
  if (said.length === 0) return '';
  return `${areEarlier ? 'after the knock: ' : ''}${rowWords(said.map((kind) => signNames[kind]))}`;
}

const places: Readonly<Record<LoggedBlows['place'], string>> = {
  middle: 'middle',
  'long-ends': 'ends of the long axis',
  'short-ends': 'ends of the short axis',
  corners: 'corners',
  border: 'around the border',
  'glancing-long': 'glancing, long axis',
  'glancing-short': 'glancing, short axis',
};

/** "C4: 3 sets, 12 blows heard (border, from above, light)". */
export function loggedBlowsWords({
  note,
  sets,
  counted: heardBlows,
  hasUncounted,
  logged,
  unlogged,
}: NoteBlows): string {
  const heard =
    heardBlows === 0
      ? 'not counted'
      : hasUncounted
        ? `${heardBlows} or more blows`
        : counted(heardBlows, 'blow');
  const where = logged.map(
    ({ place, side, firmness }) => `${places[place]} from ${side}, ${firmness}`,
  );
  if (unlogged > 0) where.push('place not logged');
  return `${displayName(note)}: ${counted(sets, 'set')}, ${heard} (${where.join('; ')})`;
}

/** "Since the tuning of 3 May 2026 by …". */
export const tuningWords = (at: number, who: string): string =>
  `Since the tuning of ${dayWords(at)}${who === '' ? '' : ` by ${who}`}`;

const sources: Readonly<Record<Taking['source'], string>> = {
  microphone: 'a phone’s microphone',
  file: 'a sound file',
  practice: 'a simulated pan (not a real one)',
};

const against: Readonly<Record<Reference, string>> = {
  band: 'the band’s pitch',
  pan: 'the pan’s own pitch',
};

/** How the values came about and how sure they are, in sentences. */
export function howWords(round: SheetRound, a4: string): readonly string[] {
  return [
    takingWords(round.takings),
    'Each partial is measured by itself once the glide after the strike is over.',
    `cents: f1 against equal temperament at ${a4}. ±: one standard error, with the scatter of the strikes in it. octave, third (12th: twelfth, 15th: double octave): against 2, 3 or 4 times the note’s own f1.`,
    'ring: seconds to fall by 60 dB at the rate of the first half second. spread: between the highest and lowest strike, cents. moved: since the day named under “What changed since”, without what the whole pan did; in brackets where it is less than three standard errors.',
    `State against ${against[round.reference]}, cents (third): ${limitWords(round.limits)}, else avoid. No published standard exists for these limits.`,
  ];
}

const limitWords = ({ good, playable, out }: ToleranceSet): string =>
  rowWords(
    Object.entries({ good, playable, out }).map(
      ([name, { main, third }]) => `${name} ${main} (${third})`,
    ),
  );

/** Once for all readings, however many phones and versions took them. */
const takingWords = (takings: readonly Taking[]): string => {
  const each = <Value>(of: (taking: Taking) => Value): readonly Value[] => [
    ...new Set(takings.map(of)),
  ];
  if (takings.length === 0) return '';
  const heard = each(({ source, sampleRate }) => `${sources[source]} at ${sampleRate} Hz`);
  const versions = each(({ appVersion }) => appVersion);
  const kept = [...new Set(takings.flatMap(({ processing }) => processing))];
  return [
    `Heard with ${listWords(heard)} by Ringwright ${listWords(versions)}.`,
    kept.length > 0 ? `The phone kept its ${listWords(kept)} on.` : '',
    takings.some(({ gaps }) => gaps > 0) ? 'Some sound was lost on the way.' : '',
  ]
    .filter((part) => part !== '')
    .join(' ');
};
