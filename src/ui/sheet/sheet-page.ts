// The sheet as a page: the same piece is shown on the screen, printed, and saved as a file.

import type { NoteStanding } from '../../domain/reading/note-standing';
import type { Sheet, SheetNote } from '../../domain/sheet/sheet';
import { displayName } from '../../domain/tuning/note-names';
import { standingLabel } from '../parts/drawing/standing-note-mark';
import { dayWords } from '../words/day-words';
import { familyWords } from '../words/family-words';
import { rackWords } from '../words/rack-words';
import { a4Words, againstBandWords, signWords, spreadWords } from '../words/result-words';
import { standingNumber } from '../words/standing-words';
import { airLine, roundLine, sheetWords } from '../words/tuner/sheet-words';
import { element, type Markup, type MarkupElement } from './markup';
import { type MapNote, sheetMap, standingSign } from './sheet-map';
import { changesSection, sheetStory } from './sheet-story';
import { sheetTable } from './sheet-table';

/** The whole sheet. `photo` is the address of a picture of the pan, or null. */
export function sheetPage(sheet: Sheet, photo: string | null): MarkupElement {
  const map = new Map(sheet.notes.map((note) => [note.note, mapNote(note)]));
  return element(
    'article',
    { class: 'sheet' },
    element(
      'header',
      { class: 'sheet-head' },
      element('h1', {}, sheet.pan.name),
      element('p', {}, sheetWords.made(dayWords(sheet.madeAt))),
    ),
    element(
      'div',
      { class: 'sheet-top' },
      element(
        'div',
        { class: 'sheet-beside' },
        element(
          'div',
          { class: photo === null ? 'sheet-who' : 'sheet-who with-photo' },
          facts(sheet),
          photo === null
            ? null
            : element('img', { class: 'sheet-photo', src: photo, alt: sheetWords.photoAlt }),
        ),
        beforeTuning(sheet),
        request(sheet),
        changesSection(sheet),
      ),
      element(
        'div',
        { class: 'sheet-drawing' },
        sheetMap(sheet.layout, map),
        legend(sheet.notes),
        element(
          'p',
          { class: 'sheet-small' },
          signWords([...map.values()].map(({ text }) => text)),
        ),
      ),
    ),
    element(
      'section',
      { class: 'sheet-notes', 'aria-label': sheetWords.table, tabindex: '0' },
      sheetTable(sheet.notes),
    ),
    ...sheetStory(sheet),
  );
}

function mapNote(note: SheetNote): MapNote {
  const judged = note.measured && { fundamental: { cents: note.measured.cents } };
  return {
    standing: note.standing,
    text: standingNumber(note, judged),
    label: standingLabel(displayName(note.note), note),
  };
}

function facts(sheet: Sheet): MarkupElement {
  const { pan, round, panPitch, a4 } = sheet;
  return pairs('sheet-facts', [
    [sheetWords.family, familyWords[pan.family]],
    [sheetWords.layout, sheet.layout.name],
    [sheetWords.owner, pan.owner],
    [sheetWords.maker, pan.maker],
    [sheetWords.serial, pan.serial],
    [sheetWords.finish, pan.finish],
    [sheetWords.bandPitch, a4Words(a4)],
    [
      sheetWords.panPitch,
      panPitch
        ? `${a4Words(panPitch.a4)}, ${againstBandWords(panPitch, a4)}. ${spreadWords(panPitch)}`
        : sheetWords.noPanPitch,
    ],
    [sheetWords.heard, round ? roundLine(round) : sheetWords.notHeard],
    [sheetWords.air, round ? airLine(round) : ''],
    [sheetWords.remarks, pan.remarks],
  ]);
}

function beforeTuning({ round, since }: Sheet): MarkupElement | null {
  if (!round?.isBeforeTuning || since.kind !== 'tuning') return null;
  return element(
    'p',
    { class: 'sheet-warning' },
    sheetWords.beforeTuning(dayWords(since.visit.visitedAt)),
  );
}

/** What was left empty is a line to write on. */
const request = ({ request: { wanted, wantedBy, contact } }: Sheet): MarkupElement =>
  pairs(
    'sheet-request',
    [
      [sheetWords.wanted, wanted],
      [sheetWords.wantedBy, wantedBy],
      [sheetWords.contact, contact],
    ],
    true,
  );

function pairs(
  name: string,
  entries: readonly (readonly [title: string, text: string])[],
  areEmptyKept = false,
): MarkupElement {
  return element(
    'dl',
    { class: name },
    ...entries
      .filter(([, text]) => areEmptyKept || text !== '')
      .map(([title, text]) =>
        element(
          'div',
          {},
          element('dt', {}, title),
          element('dd', text === '' ? { class: 'sheet-blank' } : {}, text),
        ),
      ),
  );
}

const order: readonly NoteStanding[] = ['avoid', 'out', 'playable', 'good', 'unread'];

function legend(notes: readonly SheetNote[]): MarkupElement {
  const items = order.flatMap((standing): readonly Markup[] => {
    const count = notes.filter((note) => note.standing === standing).length;
    if (count === 0) return [];
    const text = ` ${count} ${rackWords.standings[standing]}`;
    return [element('li', {}, standingSign(standing), text)];
  });
  return element('ul', { class: 'sheet-legend' }, ...items);
}
