// What the backup screen says.
import type { BackupRefusal } from '../../domain/ports/backup-files';
import type { HandedOut } from '../../domain/ports/file-handout';
import type { StoreTrouble } from '../../domain/ports/pan-store';
import type { BackupReminder } from '../../domain/records/backup-reminder';
import type { FileFault } from '../../domain/records/backup-verdict';
import { storeTroubleWords } from './rack-words';

const records = (count: number): string => (count === 1 ? '1 entry' : `${count} entries`);

export const backupWords = {
  title: 'Back up',
  titlePan: (name: string) => `Send ${name}`,
  why: 'A phone can be lost, and a browser may clear what it keeps. One file holds the whole rack, with photos and sounds.',
  whyPan:
    'One file holds this pan, with all its rounds. It can be opened in this app on another phone.',
  make: 'Make the file',
  makeAgain: 'Make it anew',
  handOut: 'Save or send the file',
  making: (percent: number) => `Making the file: ${percent} %`,
  ready: (name: string, size: string) => `${name} is ready, ${size}.`,
  leftOut: (count: number) => `${records(count)} could not be read any more and are not in it.`,
  last: (when: string) => `Last backup ${when}.`,
  never: 'There has been no backup yet.',
  takeTitle: 'Take a file in',
  takeWhy:
    'A backup, or a pan that somebody sent. Nothing on this phone is lost or doubled: what is there already stays, what is new is added.',
  choose: 'Choose a file',
  checking: (percent: number) => `Checking the file: ${percent} %. Nothing is changed yet.`,
  whole: (pans: number, readings: number) =>
    `The file is whole: ${pans === 1 ? '1 pan' : `${pans} pans`}, ${readings === 1 ? '1 reading' : `${readings} readings`}.`,
  inPart: 'The file is damaged. What is good in it can be taken in:',
  someOf: (pans: number, readings: number) =>
    `${pans === 1 ? '1 pan' : `${pans} pans`}, ${readings === 1 ? '1 reading' : `${readings} readings`}`,
  lineLeftOut: (line: number) => `Line ${line} is left out.`,
  moreLeftOut: (count: number) => `${count} more lines are left out.`,
  repaired: (count: number) => `${records(count)} had bad parts, which are left out.`,
  takeIn: 'Take it in',
  taking: (percent: number) => `Taking it in: ${percent} %`,
  taken: (count: number) =>
    count === 0 ? 'Everything in it was here already.' : `${records(count)} are new here.`,
  fileChanged: 'The file changed while it was read. Choose it again.',
  keptSafe: 'The browser promises to keep the rack on this phone.',
  keptUnsafe:
    'This browser may clear the rack when the phone is full or the app is not used for long. Back up often.',
  share: 'A share sheet did not open. Tap again.',
} as const;

export const handedOutWords: Readonly<Record<HandedOut, string>> = {
  shared: 'The file was handed on.',
  downloaded: 'The file is among your downloads.',
  dismissed: '',
  again: backupWords.share,
  failed: 'The file could not be handed out. Tap again.',
};

export const refusalWords: Readonly<Record<BackupRefusal, string>> = {
  foreign: 'This file is no backup of this app. Nothing was changed.',
  newer:
    'This file was made by a newer version of the app. Update the app, then try again. Nothing was changed.',
  nothing: 'Nothing in this file can be used. Nothing was changed.',
  'too-large': 'This file is larger than any rack, so it was not opened. Nothing was changed.',
  unreadable: 'The phone could not read this file. Nothing was changed.',
  packed: 'This browser is too old to unpack the file. Update the browser. Nothing was changed.',
};

export const faultWords: Readonly<Record<FileFault, string>> = {
  'no-header': 'Its beginning is missing.',
  'no-end': 'Its end is missing.',
  'lines-missing': 'Lines are missing.',
  changed: 'Something in it was changed.',
  'too-long': 'It is too long, so its end was not read.',
  'too-many': 'It holds too many entries, so its end was not read.',
};

export const takeInTroubleWords = (trouble: StoreTrouble | 'file-changed'): string =>
  trouble === 'file-changed' ? backupWords.fileChanged : storeTroubleWords[trouble];

export const reminderWords = (reminder: BackupReminder): string =>
  reminder.kind === 'readings'
    ? `${reminder.count} readings are in no backup yet.`
    : `The last backup is ${reminder.days} days old.`;

/** A file size for people: "3.4 MB", "12 kB". */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 1_000_000) return `${Math.round(bytes / 1000)} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}
