// The table of the sheet: one row for each note, lowest first.
import type { SheetNote } from '../../domain/sheet/sheet';
import { displayName } from '../../domain/tuning/note-names';
import { shortDayWords } from '../words/day-words';
import { rackWords } from '../words/rack-words';
import { signedTenths } from '../words/result-words';
import { octaveCell, remarksCell, sheetWords, thirdCell } from '../words/tuner/sheet-words';
import { tenths, tenthsUp } from '../words/words';
import { element, type Markup, type MarkupElement } from './markup';
import { standingSign } from './sheet-map';

type Column = keyof typeof sheetWords.columns;
const columns = Object.keys(sheetWords.columns) as readonly Column[];

export const sheetTable = (notes: readonly SheetNote[]): MarkupElement =>
  element(
    'table',
    { class: 'sheet-table' },
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        ...columns.map((column) =>
          element('th', { scope: 'col', class: `col-${column}` }, sheetWords.columns[column]),
        ),
      ),
    ),
    element('tbody', {}, ...notes.map(row)),
  );

const row = (note: SheetNote): MarkupElement =>
  element(
    'tr',
    { 'data-note': String(note.note) },
    ...columns.map((column) =>
      element(
        column === 'note' ? 'th' : 'td',
        column === 'note'
          ? { scope: 'row', class: 'col-note' }
          : { class: `col-${column}`, 'data-column': column },
        ...cell(column, note),
      ),
    ),
  );

function cell(column: Column, note: SheetNote): readonly Markup[] {
  const { measured } = note;
  switch (column) {
    case 'note':
      return [displayName(note.note)];
    case 'state':
      return [standingSign(note.standing), ` ${rackWords.standings[note.standing]}`];
    case 'octave':
      return [octaveCell(note)];
    case 'third':
      return [thirdCell(note)];
    case 'moved':
      return [movedCell(note)];
    case 'remarks':
      return [remarksCell(note)];
    case 'hz':
      return measured ? [measured.hz.toFixed(2)] : [];
    case 'cents':
      return measured ? [signedTenths(measured.cents)] : [];
    case 'sigma':
      return measured ? [tenthsUp(measured.sigmaCents)] : [];
    case 'ring':
      return measured ? [measured.ring.toFixed(1)] : [];
    case 'strikes':
      return measured ? [String(measured.strikes)] : [];
    case 'day':
      return measured && note.readAt !== null ? [shortDayWords(note.readAt)] : [];
    case 'spread':
      return measured && measured.strikes > 1 ? [tenths(measured.spread)] : [];
  }
}

/** In brackets what may be nothing. */
function movedCell({ moved }: SheetNote): string {
  if (!moved) return '';
  const text = signedTenths(moved.cents);
  return moved.hasChanged ? text : `(${text})`;
}
