// What the bar says that takes something back, and the list of what was taken out.
import type { TakenOut } from '../../../domain/records/standing/taken-out';
import { displayName } from '../../../domain/tuning/note-names';
import type { Undoable } from '../../../state/keeping/undo-model';
import { dayWords, momentWords } from '../day-words';
import { panWords } from '../pan-words';

export const undoWords = {
  title: 'Taken out',
  why: 'What was taken out or marked in the last seven days. One tap brings it back.',
  photos:
    'A photo that was removed is shown nowhere. It stays on this phone and in backups with the history of the pan.',
  none: 'Nothing was taken out in the last seven days.',
  putBack: 'Put it back',
  unmark: 'Take the mark back',
} as const;

/** What was done, for the bar: "Visit taken out." */
export function doneWords(done: Undoable): string {
  switch (done.kind) {
    case 'visit':
      return 'Visit taken out.';
    case 'round':
      return 'Round taken out.';
    case 'pan':
      return 'Pan taken off the rack.';
    case 'photo':
      return 'Photo removed.';
    case 'mark':
      return `${displayName(done.note)} marked: ${panWords.marked[done.mark]}.`;
  }
}

/** What it was, for the list. */
export function takenOutTitle(out: TakenOut): string {
  switch (out.kind) {
    case 'visit':
      return `Visit of ${dayWords(out.visit.visitedAt)}`;
    case 'round':
      return `Round of ${momentWords(out.round.at)}`;
    case 'pan':
      return 'This pan, off the rack';
    case 'photo':
      return 'Photo of the pan';
    case 'mark':
      return `${displayName(out.note)}: ${panWords.marked[out.mark]}`;
  }
}

export const takenOutWhen = (out: TakenOut): string =>
  out.kind === 'mark' ? `marked ${momentWords(out.at)}` : `taken out ${momentWords(out.at)}`;
