// What blows have done on a pan, as a page to print or to send: a row for each place, with its drawing.

import type { PlaceAnswer } from '../../domain/advice/pan-answers';
import type { BlowWhere } from '../../domain/records/blow-places';
import { placeArrows, placeSpots } from '../parts/drawing/place-geometry';
import { noteRowWords } from '../words/list-words';
import { benchWords } from '../words/measuring/bench-words';
import { answerCell, answersWords, setsCell } from '../words/tuner/answers-words';
import { element, type MarkupElement } from './markup';

/** `pan` and `day` as they are told. */
export const answersPage = (
  pan: string,
  day: string,
  answers: readonly PlaceAnswer[],
): MarkupElement =>
  element(
    'article',
    { class: 'sheet answers-page' },
    element('h1', {}, answersWords.title),
    element('p', {}, answersWords.pan(pan, day)),
    element('p', {}, `${answersWords.why} ${answersWords.scale}`),
    element('p', {}, answersWords.fixed),
    element('p', {}, answersWords.marks),
    element(
      'div',
      { class: 'sheet-notes', tabindex: '0', role: 'region', 'aria-label': answersWords.title },
      element(
        'table',
        { class: 'sheet-table' },
        element(
          'thead',
          {},
          element(
            'tr',
            {},
            ...Object.entries(answersWords.columns).map(([column, text]) =>
              element('th', { scope: 'col', class: classOf(column) }, text),
            ),
          ),
        ),
        element('tbody', {}, ...answers.map(row)),
      ),
    ),
  );

const classOf = (column: string): string =>
  column === 'where' ? 'col-note' : column === 'notes' ? 'col-remarks' : `col-${column}`;

function row(answer: PlaceAnswer): MarkupElement {
  const { place, side, partials, notes } = answer;
  const [fundamental, octave, third] = partials;
  return element(
    'tr',
    { 'data-place': place, 'data-side': side },
    element(
      'th',
      { scope: 'row', class: 'col-note' },
      placeDrawing({ place, side }),
      element('br'),
      `${benchWords.places[place]}, ${benchWords.sides[side]}`,
    ),
    element('td', { class: 'col-fundamental' }, answerCell(fundamental)),
    element('td', { class: 'col-octave' }, answerCell(octave)),
    element('td', { class: 'col-third' }, answerCell(third)),
    element('td', { class: 'col-sets' }, setsCell(answer)),
    element('td', { class: 'col-remarks' }, noteRowWords(notes)),
  );
}

/** Black on white, like all of the paper. */
function placeDrawing({ place, side }: BlowWhere): MarkupElement {
  const isAbove = side === 'above';
  const line = { fill: 'none', stroke: '#000', 'stroke-width': '4' };
  const broken: Record<string, string> = isAbove ? {} : { 'stroke-dasharray': '5 3' };
  const oval = { cx: '50', cy: '35', rx: '42', ry: '29' };
  const arrow = placeArrows[place];
  return element(
    'svg',
    { viewBox: '0 0 100 70', width: '80', height: '56', 'aria-hidden': 'true' },
    element('ellipse', { ...oval, fill: 'none', stroke: '#000' }),
    place === 'border' ? element('ellipse', { ...oval, ...line, ...broken }) : null,
    arrow ? element('path', { d: arrow, ...line, ...broken }) : null,
    ...placeSpots[place].map(([x, y]) =>
      element('circle', {
        cx: String(x),
        cy: String(y),
        r: '5',
        fill: isAbove ? '#000' : '#fff',
        stroke: '#000',
        'stroke-width': '2',
      }),
    ),
  );
}
