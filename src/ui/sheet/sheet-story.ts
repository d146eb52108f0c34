// The lower part of the sheet: what happened and was done to the pan, what changed, how it was measured, and room to write.

import type { RoundChanges } from '../../domain/rounds/round-changes';
import type { Sheet, SheetNote } from '../../domain/sheet/sheet';
import { displayName } from '../../domain/tuning/note-names';
import {
  changedPartials,
  panShiftWords,
  signedChange,
  temperatureWords,
} from '../words/change-words';
import { dayWords } from '../words/day-words';
import { rowWords } from '../words/list-words';
import { a4Words } from '../words/result-words';
import { eventWords } from '../words/tuner/sheet-event-words';
import { howWords, loggedBlowsWords, sheetWords, tuningWords } from '../words/tuner/sheet-words';
import { element, type Markup, type MarkupElement } from './markup';

/** As many are told on paper; all are in the pan's own file. */
const most = { events: 6, moved: 8, blows: 8 } as const;

export const sheetStory = (sheet: Sheet): readonly MarkupElement[] => [
  element(
    'div',
    { class: 'sheet-story' },
    section(sheetWords.happened, happened(sheet)),
    section(sheetWords.blows, blows(sheet)),
    sheet.stopgaps.length === 0 ? null : section(sheetWords.stopgaps, stopgaps(sheet)),
    sheet.round ? section(sheetWords.how, how(sheet)) : null,
  ),
  element(
    'section',
    { class: 'sheet-answer' },
    element('h2', {}, sheetWords.answer),
    ...sheetWords.answerLines.map((line) => element('p', { class: 'sheet-line' }, line)),
  ),
];

/** What moved since the last professional tuning. */
export const changesSection = (sheet: Sheet): MarkupElement =>
  section(sheetWords.changes, changes(sheet));

const section = (title: string, content: readonly Markup[]): MarkupElement =>
  element('section', {}, element('h2', {}, title), ...content);

const line = (text: string): MarkupElement => element('p', {}, text);

const list = (entries: readonly string[], longest: number): readonly MarkupElement[] => [
  element('ul', {}, ...entries.slice(0, longest).map((entry) => element('li', {}, entry))),
  ...(entries.length > longest ? [line(sheetWords.earlier(entries.length - longest))] : []),
];

function changes({ since, notes }: Sheet): readonly Markup[] {
  switch (since.kind) {
    case 'none':
      return [line(sheetWords.notComparable)];
    case 'first-round':
      return since.changes
        ? [line(`${sheetWords.noTuning}, ${dayWords(since.at)}.`), ...moves(since.changes, notes)]
        : [line(sheetWords.notComparable)];
    case 'tuning': {
      const { visitedAt, who, done } = since.visit;
      const tuned = [`${tuningWords(visitedAt, who)}.`, done].filter((part) => part !== '');
      return [
        line(tuned.join(' ')),
        ...(since.changes ? moves(since.changes, notes) : [line(sheetWords.noChanges)]),
      ];
    }
  }
}

function moves(found: RoundChanges, notes: readonly SheetNote[]): readonly Markup[] {
  const thirds = new Map(notes.map(({ note, measured }) => [note, measured?.third?.kind ?? null]));
  const moved = found.notes.flatMap((change) => {
    const [first] = changedPartials(change, thirds.get(change.note) ?? null);
    if (!first) return [];
    return [[displayName(change.note), first.sign, signedChange(first.cents)].join(' ')];
  });
  const rest = moved.length - most.moved;
  const told = moved.slice(0, most.moved).map((each) => each.replace('  ', ' '));
  return [
    line(`${panShiftWords(found)} ${temperatureWords(found)}`.trim()),
    line(
      told.length === 0
        ? sheetWords.noneMoved
        : `${sheetWords.movedMost}: ${rowWords([...told, rest > 0 ? `+${rest}` : ''])}.`,
    ),
  ];
}

const happened = ({ events }: Sheet): readonly Markup[] =>
  events.length === 0
    ? [line(sheetWords.nothingHappened)]
    : list(
        events.map((event) => `${dayWords(event.at)}: ${eventWords(event)}`),
        most.events,
      );

const blows = ({ blows: found }: Sheet): readonly Markup[] =>
  found.length === 0 ? [line(sheetWords.noBlows)] : list(found.map(loggedBlowsWords), most.blows);

const stopgaps = ({ stopgaps: found }: Sheet): readonly Markup[] =>
  list(
    found.map(({ note, at }) => `${displayName(note)}, ${dayWords(at)}: ${sheetWords.magnet}`),
    found.length,
  );

function how({ round, a4, notes }: Sheet): readonly Markup[] {
  if (!round) return [];
  const hasSigns = notes.some(({ signs }) => signs.kinds.length > 0);
  const sentences = [...howWords(round, a4Words(a4)), hasSigns ? sheetWords.howSigns : ''];
  return [element('p', { class: 'sheet-small' }, sentences.join(' ').trim())];
}
