// The pan on the sheet: black on white, the state of each note by the shape of its oval and by a word or number.
import type { Drum, NotePlace, PanLayout } from '../../domain/pans/layout';
import type { NoteStanding } from '../../domain/reading/note-standing';
import { displayName } from '../../domain/tuning/note-names';
import type { MidiNote } from '../../domain/tuning/units';
import { drawnMiddle, drawnRadius, rim } from '../parts/drawing/pan-drawing-geometry';
import { element, type MarkupElement } from './markup';

/** What a note of the map says, and what it is called for those who do not see it. */
export interface MapNote {
  readonly standing: NoteStanding;
  readonly text: string;
  readonly label: string;
}

/** One drawing for each drum, side by side. */
export function sheetMap(layout: PanLayout, notes: ReadonlyMap<MidiNote, MapNote>): MarkupElement {
  const { drums } = layout;
  const columns = columnsOf(drums.length);
  return element(
    'div',
    { class: `sheet-map columns-${columns}` },
    ...drums.map((drum) =>
      element(
        'figure',
        {},
        drumDrawing(drum, drums.length === 1 ? layout.name : drum.name, notes, columns),
        drums.length === 1 ? null : element('figcaption', {}, drum.name),
      ),
    ),
  );
}

/** So that the drawing is about as high as it is wide. */
const columnsOf = (drums: number): number => Math.ceil(Math.sqrt(drums));

function drumDrawing(
  drum: Drum,
  name: string,
  notes: ReadonlyMap<MidiNote, MapNote>,
  columns: number,
): MarkupElement {
  const labels = drum.notes.map(({ note }) => notes.get(note)?.label ?? displayName(note));
  return element(
    'svg',
    {
      viewBox: `${-drawnRadius} ${-drawnRadius} ${2 * drawnRadius} ${2 * drawnRadius}`,
      role: 'img',
      'aria-label': [name, ...labels].join('. '),
    },
    element('circle', { r: String(rim), class: 'sheet-rim' }),
    ...drum.notes.map((place) => noteDrawing(place, notes.get(place.note) ?? null, columns)),
  );
}

function noteDrawing(place: NotePlace, shown: MapNote | null, columns: number): MarkupElement {
  const { x, y } = drawnMiddle(place);
  const [rx, ry] = [rim * place.along, rim * place.across];
  const standing = shown?.standing ?? 'unread';
  const text = shown?.text ?? '';
  const nameSize = fitting(place, displayName(place.note), 14 * columns);
  const textSize = fitting(place, text, 12 * columns);
  return element(
    'g',
    { transform: `translate(${short(x)} ${short(y)})` },
    element(
      'g',
      { transform: `rotate(${short(place.clock * 30)})` },
      ...standingShape(standing, rx, ry),
    ),
    standing === 'avoid' ? cross(0.62 * ry) : null,
    element(
      'text',
      { y: short(text === '' ? 0.35 * nameSize : -0.1 * nameSize), 'font-size': short(nameSize) },
      displayName(place.note),
    ),
    text === ''
      ? null
      : element('text', { y: short(0.92 * textSize), 'font-size': short(textSize) }, text),
  );
}

/** The oval of a note that stands so: the same shapes on the map, in the table and in the legend. */
function standingShape(standing: NoteStanding, rx: number, ry: number): readonly MarkupElement[] {
  const oval = element('ellipse', {
    rx: short(rx),
    ry: short(ry),
    class: `sheet-oval ${standing}`,
  });
  if (standing !== 'out') return [oval];
  const half = `M${short(-rx)} 0A${short(rx)} ${short(ry)} 0 0 0 ${short(rx)} 0Z`;
  return [oval, element('path', { d: half, class: 'sheet-half' })];
}

const cross = (reach: number): MarkupElement =>
  element('path', {
    class: 'sheet-cross',
    d: `M${short(-reach)} ${short(-reach)}L${short(reach)} ${short(reach)}M${short(-reach)} ${short(reach)}L${short(reach)} ${short(-reach)}`,
  });

/** The shape alone, beside its word. */
export const standingSign = (standing: NoteStanding): MarkupElement =>
  element(
    'svg',
    { class: 'sheet-sign', viewBox: '-12 -8 24 16', 'aria-hidden': 'true' },
    ...standingShape(standing, 10, 6.5),
    standing === 'avoid' ? cross(4.5) : null,
  );

/** Width of a bold letter for its size, about. */
const letterWidth = 0.58;

/** The largest size up to `most` at which two lines of text are no wider and no higher than the oval on the page. */
function fitting({ along, across, clock }: NotePlace, text: string, most: number): number {
  const turn = (clock * Math.PI) / 6;
  const wide = rim * Math.hypot(along * Math.cos(turn), across * Math.sin(turn));
  const high = rim * Math.hypot(along * Math.sin(turn), across * Math.cos(turn));
  return Math.min(most, 0.85 * high, (1.8 * wide) / (letterWidth * Math.max(1, text.length)));
}

const short = (value: number): string => String(Number(value.toFixed(2)));
