// What a pan's page, its form and the rounds say.
import type { MarkKind, PanFields, RoundWay, Standing } from '../../domain/records/rack-records';
import type { RoundNews } from '../../domain/rounds/round-progress';
import { displayName } from '../../domain/tuning/note-names';
import { momentWords } from './day-words';

export const panWords = {
  addTitle: 'Add a pan',
  name: 'Name of the pan',
  nameHint: 'What your band calls it.',
  nameMissing: 'Give the pan a name. Nothing has been saved yet.',
  family: 'Kind of pan',
  owner: 'Owner',
  maker: 'Maker',
  serial: 'Serial number',
  finish: 'Finish',
  remarks: 'Remarks',
  a4: 'Band pitch of this pan, A4 in Hz',
  a4Hint: (a4: string) => `Leave it empty to follow the band: ${a4} Hz.`,
  a4Bad: 'Enter a number from 400 to 480, or leave it empty.',
  photo: 'Photo',
  takePhoto: 'Choose or take a photo',
  newPhoto: 'Choose another photo',
  noPhoto: 'Remove the photo',
  photoAlt: (name: string) => `Photo of ${name}`,
  photoBad: 'This file is not a picture that can be read here. Choose another one.',
  keep: 'Save',
  keepNew: 'Put it on the rack',
  missing: 'This pan is not on this phone.',
  askForFile: 'Whoever has it can send it to you as a file.',
  takeFileIn: 'Load or restore a file',
  details: 'Name and details',
  layout: 'Layout',
  send: 'Send this pan',
  removePan: 'Take it off the rack',
  removedPan: 'This pan is off the rack. Its readings are kept.',
  putBack: 'Put it back on the rack',
  startRound: 'Start a round',
  resumeRound: 'Go on with the round',
  leftOpen: 'A round was interrupted. Everything heard so far is kept.',
  lastRound: (when: string) => `Last round ${when}.`,
  noRound: 'This pan has not been heard yet. Start a round and strike its notes one by one.',
  result: 'Result',
  history: 'History',
  whichIsRight: 'This was written twice at the same time. Which is right?',
  conflict: (field: string) => `${field}: which is right?`,
  beginTitle: 'Start a round',
  way: 'How',
  ways: {
    guided: 'Guided: the app names each note, three strikes a note',
    free: 'Free: any order, three strikes a note',
    quick: 'Quick: any order, one strike a note',
  } satisfies Record<RoundWay, string>,
  standing: 'The pan is',
  standings: {
    settled: 'settled in the shade',
    unloaded: 'just unloaded',
    sun: 'in the sun or still warm',
  } satisfies Record<Standing, string>,
  notSettled:
    'Heat moves many notes the same way. This round will be marked provisional. A pan is settled after 20 to 30 minutes in the shade.',
  temperature: 'Air temperature in °C',
  temperatureHint: 'Leave it empty if nobody knows.',
  temperatureBad: 'Enter a number from −30 to 60, or leave it empty.',
  announcement: 'Announce the next note',
  announcements: { nothing: 'on the screen', beep: 'with two beeps', voice: 'with a voice' },
  noVoice: 'This phone has no voice of its own.',
  begin: 'Start and listen',
  progress: (done: number, all: number) => `${done} of ${all}`,
  heard: 'heard',
  mark: 'Mark',
  marks: {
    dead: 'Dead',
    buzzing: 'Buzzing',
    cracked: 'Cracked',
    skipped: 'Skip',
    none: 'Take the mark back',
  } satisfies Record<MarkKind, string>,
  marked: { dead: 'dead', buzzing: 'buzzing', cracked: 'cracked', skipped: 'skipped', none: '' },
  crackedCaution: 'A cracked pan is not played and not hammered. Show it to a professional tuner.',
  endRound: 'Finish the round',
  leave: 'Go on later',
  listenAgain: 'Go on listening',
  roundMissing: 'This round is not on this phone.',
  chooseNote: (note: string) => `Measure ${note} next`,
  backToOrder: 'Back to the order',
} as const;

/** What only the pan's page says. */
export const panPageWords = {
  conflicts: 'Two people wrote different things about this pan. Say which is right.',
  startAnother: 'New round',
  quickRound: 'Quick round',
  sheet: 'Sheet for the tuner',
  answers: 'What blows did here',
} as const;

export const markOf = (mark: MarkKind): string => panWords.marked[mark];

/** What the voice says when a note is done. */
export function newsWords(news: RoundNews): string {
  switch (news.kind) {
    case 'next':
      return spoken(displayName(news.note));
    case 'taken':
      return `${spoken(displayName(news.note))} is done`;
    case 'finished':
      return 'The round is finished';
  }
}

/** Signs that a voice would leave out or spell: "B flat 4". */
const spoken = (note: string): string =>
  note.replace('♯', ' sharp ').replace('♭', ' flat ').replace(/(\d)$/, ' $1').replace(/\s+/g, ' ');

export const fieldNames: Readonly<Record<keyof PanFields, string>> = {
  name: panWords.name,
  family: panWords.family,
  layout: panWords.layout,
  owner: panWords.owner,
  maker: panWords.maker,
  serial: panWords.serial,
  finish: panWords.finish,
  remarks: panWords.remarks,
  a4: panWords.a4,
  photo: panWords.photo,
  wanted: 'What is wanted',
  wantedBy: 'By when',
  isRemoved: 'On the rack',
};

export const conflictTitle = (field: keyof PanFields): string =>
  panWords.conflict(fieldNames[field]);

/** One of two values that were written at the same time, with the moment it was written. */
export function conflictValue(field: keyof PanFields, value: unknown, at: number): string {
  return `${valueWords(field, value)} (${momentWords(at)})`;
}

function valueWords(field: keyof PanFields, value: unknown): string {
  switch (field) {
    case 'layout':
      return String((value as PanFields['layout']).name);
    case 'photo':
      return value === null ? 'no photo' : 'this photo';
    case 'isRemoved':
      return value === true ? 'taken off' : 'on the rack';
    case 'a4':
      return value === null ? 'like the band' : `${String(value)} Hz`;
    default:
      return String(value) === '' ? 'empty' : String(value);
  }
}
