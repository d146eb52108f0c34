// What is said about files that go to other people and come from them.

import type { ShareRefusal } from '../../../domain/ports/arrivals';
import type { BackupRefusal } from '../../../domain/ports/backup-files';
import { type PanContents, totalOf } from '../../../domain/records/backup/backup-contents';
import type { FileFault } from '../../../domain/records/backup/backup-verdict';
import type { Differing } from '../../../domain/records/merging/differing';
import type { FileEffects } from '../../../domain/records/merging/file-effects';
import { counted, pluralOf } from '../count-words';
import { firstWords, rowWords } from '../list-words';

const readingsOf = (count: number): string => counted(count, 'reading');
const roundsOf = (count: number): string => counted(count, 'round');
const pansOf = (count: number): string => counted(count, 'pan');

export const exchangeWords = {
  whyPan:
    'One file holds this pan with all its rounds. Send it to your tuner or to a bandmate: in this app they can take the pan over.',
  inFile: 'In the file',
  anyone: 'Anyone who has the file can read all of it. Send it only to people you trust.',
  howToOpen:
    'Whoever gets it opens it with this app, or chooses it there: Rack, Back up, Load or restore a file.',
  joinTitle: 'One rack on two phones',
  join: 'Send this file to a bandmate, and take theirs in. Then both phones have everything. Do it as often as you like: nothing is doubled.',
  nothingYet: 'No pan is kept here yet, so there is nothing to back up. Add a pan, or load a file.',
  takeTitle: 'Load or restore a file',
  takeLink: 'Load or restore a file',
  none: 'No file waits here. Choose one: a pan that somebody sent, the band’s rack, or your own backup. It is checked first, and you are asked before anything is added.',
  safe: 'What is on this phone already stays. What is new is added. Nothing is doubled.',
  choose: 'Choose a file',
  chooseOther: 'Choose another file',
  checking: (percent: number) => `Checking the file: ${percent} %. Nothing is changed yet.`,
  isWhole: 'The file is whole.',
  inPart: 'The file is damaged. What is good in it can be taken in.',
  newHere: 'new here',
  hereAlready: 'here already',
  unnamed: 'a pan without a name',
  morePans: (count: number) => `and ${pansOf(count)} more`,
  lineLeftOut: (line: number) => `Line ${line} is left out.`,
  moreLeftOut: (count: number) => `${counted(count, 'more line is', 'more lines are')} left out.`,
  repaired: (count: number) =>
    `${counted(count, 'entry', 'entries')} had bad parts, which are left out.`,
  leave: 'Do not take it in',
  next: (name: string) => `Look at the next file: ${name}`,
  taking: (percent: number) => `Taking it in: ${percent} %`,
  nothingNew: 'Everything in it was here already. Nothing was changed.',
  addedTo: (name: string, isNew: boolean) =>
    isNew ? `${name} is on your rack now.` : `${name} has what was new.`,
  added: (count: number) => `${counted(count, 'new entry', 'new entries')} in all.`,
  leftOut: (count: number) =>
    `${counted(count, 'line of the file was', 'lines of the file were')} left out.`,
  settle: (name: string) => `Two phones wrote different things about ${name}. Say which is right:`,
  differingFound: (count: number) =>
    `${counted(count, 'entry', 'entries')} in the file ${pluralOf(count, 'says', 'say')} something else than yours. Yours stay as they are.`,
  differingTaken: (count: number) =>
    `${counted(count, 'entry', 'entries')} of the file ${pluralOf(count, 'says', 'say')} something else than yours. Yours stay until you choose. Nothing is thrown away.`,
  moreDiffering: (count: number) => `and ${count} more, where yours stay`,
  keepYours: 'Keep yours',
  takeTheirs: 'Take theirs',
  edits: (names: string) => `It has changes of the details of ${names}.`,
  hides: (names: string) => `It takes ${names} off your rack.`,
  takenOut: (count: number) =>
    `${counted(count, 'entry', 'entries')} of the file ${pluralOf(count, 'was', 'were')} taken out on this phone, so ${pluralOf(count, 'it does', 'they do')} not come back.`,
  healed: (count: number) =>
    `${counted(count, 'damaged entry', 'damaged entries')} on this phone ${pluralOf(count, 'is', 'are')} whole again.`,
  changedFile: 'The file changed while it was read. Choose it again.',
} as const;

/** What an entry is called, one and many. */
const entryNames: Readonly<Record<Differing['kind'], readonly [string, string]>> = {
  'pan-edit': ['change of the pan’s details', 'changes of pans’ details'],
  round: ['round', 'rounds'],
  'round-end': ['end of a round', 'ends of rounds'],
  reading: ['reading', 'readings'],
  mark: ['mark on a note', 'marks on notes'],
  blows: ['set of blows', 'sets of blows'],
  'knock-check': ['knock check', 'knock checks'],
  stopgap: ['magnet', 'magnets'],
  'tuner-visit': ['visit of the tuner', 'visits of the tuner'],
  erasure: ['entry that takes something out', 'entries that take something out'],
  photo: ['photo', 'photos'],
  sound: ['kept sound', 'kept sounds'],
};

/** "Heron: a reading". */
export const differingWords = (name: string, kind: Differing['kind']): string =>
  `${name}: ${entryNames[kind][0]}`;

/** "It takes out 1 round and 2 marks on notes that are on this phone." */
export const erasedWords = (erased: FileEffects['erased']): string =>
  `It takes out ${rowWords(
    erased.map(({ kind, count }) => counted(count, ...entryNames[kind])),
  )} on this phone.`;

/** What people want to know before a file leaves the phone, a line each. */
export function contentsWords(pans: readonly PanContents[]): readonly string[] {
  const { rounds, readings, photos, sounds, owners, hasRemarks } = totalOf(pans);
  return [
    ...(pans.length > 1 ? [pansOf(pans.length)] : []),
    rounds + readings === 0
      ? 'nothing measured yet'
      : rowWords([roundsOf(rounds), readingsOf(readings)]),
    ...(photos > 0 ? [counted(photos, 'photo')] : []),
    ...(sounds > 0 ? [counted(sounds, 'kept sound')] : []),
    ...(owners.length > 0 ? [ownersWords(owners)] : []),
    ...(hasRemarks ? ['what was written down as remarks'] : []),
  ];
}

const ownersNamed = 5;

function ownersWords(owners: readonly string[]): string {
  const title = pluralOf(owners.length, 'name of the owner', 'names of owners');
  return `${title}: ${firstWords(owners, ownersNamed)}`;
}

/** A pan of a file: what is in it, and whether it is here already (null: nobody can tell). */
export function panInFileWords(pan: PanContents, isHere: boolean | null): string {
  const where = isHere === null ? '' : isHere ? exchangeWords.hereAlready : exchangeWords.newHere;
  return rowWords([where, roundsOf(pan.rounds), readingsOf(pan.readings)]);
}

/** What taking in means, and the name of the button for it. */
export function takeInWords(
  pans: readonly PanContents[],
  isHere: (pan: PanContents) => boolean,
): { readonly what: string; readonly button: string } {
  const [first] = pans;
  const there = pans.filter(isHere).length;
  if (pans.length === 1 && first) {
    const name = first.name === '' ? exchangeWords.unnamed : first.name;
    return there === 0
      ? { what: `${name} is not on your rack yet.`, button: 'Take this pan over' }
      : { what: `You have ${name} already.`, button: 'Add what is new' };
  }
  if (there === pans.length) {
    return { what: `You have all ${pansOf(there)} already.`, button: 'Add what is new' };
  }
  const news = pansOf(pans.length - there);
  return {
    what: there === 0 ? `A rack of ${news}.` : `A rack with ${news} that you do not have.`,
    button: 'Join this rack',
  };
}

export const backupRefusalWords: Readonly<Record<BackupRefusal, string>> = {
  foreign: 'This file was not made by this app. Nothing was changed.',
  newer:
    'This file was made by a newer version of the app. Update the app, then try again. Nothing was changed.',
  nothing: 'Nothing in this file can be used. Nothing was changed.',
  'too-large':
    'This file holds more than any band can own, so it was not opened. Nothing was changed.',
  unreadable: 'The phone could not read this file. Nothing was changed.',
  packed: 'This browser is too old to unpack the file. Update the browser. Nothing was changed.',
  damaged: 'More of this file is damaged than good. Ask for it again. Nothing was changed.',
};

export const shareRefusalWords: Readonly<Record<ShareRefusal, string>> = {
  'other-site': 'Another site tried to put a file in here. It was not let in.',
  'too-large':
    'What was shared is larger than 100 MB and was not kept. Choose the file here instead.',
  'no-room':
    'What was shared now was not kept, because too much waits here already. Look at that first, then share it again.',
};

export const faultWords: Readonly<Record<FileFault, string>> = {
  'no-header': 'Its beginning is missing.',
  'no-end': 'Its end is missing.',
  'lines-missing': 'Lines are missing.',
  changed: 'Something in it was changed.',
  'too-long': 'It is too long, so its end was not read.',
  'too-many': 'It holds too many entries, so its end was not read.',
  'too-damaged': 'Too much of it is damaged, so its end was not read.',
};
