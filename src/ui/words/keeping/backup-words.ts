// What the backup screen says.

import type { HandedOut } from '../../../domain/ports/file-handout';
import { counted } from '../count-words';

export const backupWords = {
  title: 'Back up',
  titlePan: (name: string) => `Send ${name}`,
  why: 'A phone can be lost, and a browser may clear what it keeps. One file holds the whole rack, with photos and sounds.',
  make: 'Make the file',
  makeAgain: 'Make it again',
  handOut: 'Save or send the file',
  making: (percent: number) => `Making the file: ${percent} %`,
  ready: (name: string, size: string) => `${name} is ready, ${size}.`,
  leftOut: (count: number) =>
    `${counted(count, 'entry', 'entries')} could not be read any more and are not in it.`,
  last: (when: string) => `Last backup ${when}.`,
  never: 'There has been no backup yet.',
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

/** A file size for people: "3.4 MB", "12 kB". */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  if (bytes < 1_000_000) return `${Math.round(bytes / 1000)} kB`;
  return `${(bytes / 1_000_000).toFixed(1)} MB`;
}
