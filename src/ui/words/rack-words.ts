// What the rack, a pan's page and the form of a pan say.

import type { StoreTrouble } from '../../domain/ports/pan-store';
import type { NeedReason } from '../../domain/rack/tuner-need';
import type { NoteStanding } from '../../domain/reading/note-standing';
import { displayName } from '../../domain/tuning/note-names';
import type { MidiNote } from '../../domain/tuning/units';
import { centsWords, counted, pluralOf } from './count-words';
import { dayWords } from './day-words';
import { firstWords } from './list-words';

export const rackWords = {
  pansKept: (count: number) => counted(count, 'pan'),
  addPan: 'Add a pan',
  backUp: 'Back up',
  fileWaits: (name: string) => `A file waits to be taken in: ${name}`,
  noMatch: 'No pan and no owner is called that.',
  empty: 'No pans are kept here yet. Add one, or just listen: strike any note.',
  first: 'Strike a note. The phone says which part of it is flat or sharp.',
  reading: 'Opening the rack',
  /** The name as a heading: that of a pan whose name was lost is empty. */
  nameOf: (name: string) => (name === '' ? 'Pan without a name' : name),
  noRoundYet: 'no round yet',
  notHeardYet: 'not heard yet',
  allGood: 'all notes good',
  openRound: 'a round is under way',
  firstRound: 'first round under way',
  removed: (count: number) => `Taken off the rack: ${count}`,
  provisional: 'provisional',
  notSaved: 'Not saved.',
  tryAgain: 'Try again',
  worstIs: (note: string) => `worst ${note}`,
  writtenTwice: 'written twice: say which is right',
  dropped: 'A pan was dropped',
  visit: 'Which pans first',
  workedOn: (notes: string) => `worked on since: ${notes}`,
  magnetOn: (notes: string) => `magnet on ${notes}`,
  today: 'today',
  yesterday: 'yesterday',
  daysAgo: (days: number) => `${counted(days, 'day')} ago`,
  weeksAgo: (weeks: number) => `${pluralOf(weeks, 'a week', `${weeks} weeks`)} ago`,
  monthsAgo: (months: number) => `${pluralOf(months, 'a month', `${months} months`)} ago`,
  round: (when: string) => `round ${when}`,
  standings: {
    good: 'good',
    playable: 'playable',
    out: 'out',
    avoid: 'avoid',
    unread: 'not heard',
  } satisfies Record<NoteStanding, string>,
} as const;

/** What cannot be read or written, and what to do about it. */
export const storeTroubleWords: Readonly<Record<StoreTrouble, string>> = {
  unavailable:
    'This browser keeps nothing here, so no pan can be kept. Listening works. Open the app in a normal window, not a private one.',
  full: 'The phone is full, so this was not saved. Delete photos or films, then try again.',
  newer:
    'The rack was written by a newer version of the app. Close the app everywhere and open it again to update it.',
  'other-window': 'Another window of the app is in the way. Close it, then try again.',
  deleted: 'The browser deleted the rack. Take a backup in, then try again.',
  failed: 'The phone could not read or write the rack. Close the app and open it again.',
};

const mostNamed = 4;

const noteList = (notes: readonly MidiNote[]): string =>
  firstWords(notes.map(displayName), mostNamed);

const countOf = ({ length }: readonly unknown[]): string =>
  pluralOf(length, 'one note', `${length} notes`);

/** Why a pan needs the tuner, a few words each. */
export function needWords(reason: NeedReason): string {
  switch (reason.kind) {
    case 'cracked':
      return `cracked: ${noteList(reason.notes)}`;
    case 'dead':
      return `dead: ${noteList(reason.notes)}`;
    case 'avoid':
      return `${countOf(reason.notes)} to avoid: ${noteList(reason.notes)}`;
    case 'out':
      return `${countOf(reason.notes)} out: ${noteList(reason.notes)}`;
    case 'buzzing':
      return `buzzing: ${noteList(reason.notes)}`;
    case 'pan-pitch':
      return `the whole pan is ${centsWords(reason.cents)} ${reason.cents < 0 ? 'flat' : 'sharp'}`;
    case 'drift':
      return `notes moved ${centsWords(reason.cents)} since the round before`;
    case 'old-round':
      return 'the last round is long ago';
    case 'never-read':
      return 'not heard yet';
  }
}

/** One sentence about a clock that is behind `seen`, the build or the newest record. */
export const clockDoubtWords = (seen: number, now: number): string =>
  `The phone says ${dayWords(now)}, the rack ${dayWords(seen)}. Check its clock.`;

const day = 24 * 3600 * 1000;

/** How long ago something was, in the words of a person. */
export function agoWords(at: number, now: number): string {
  const midnight = (time: number) => new Date(time).setHours(0, 0, 0, 0);
  const days = Math.round((midnight(now) - midnight(at)) / day);
  // By the clock of another phone it may be tomorrow already.
  if (days < -1) return `of ${dayWords(at)}, to come`;
  if (days <= 0) return rackWords.today;
  if (days === 1) return rackWords.yesterday;
  if (days < 14) return rackWords.daysAgo(days);
  if (days < 60) return rackWords.weeksAgo(Math.round(days / 7));
  return rackWords.monthsAgo(Math.round(days / 30.4));
}
