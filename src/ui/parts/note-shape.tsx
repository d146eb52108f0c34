// One note of a drum as it is drawn: its oval, what it is marked with, its name.
import type { NotePlace } from '../../domain/pans/layout';
import { displayName } from '../../domain/tuning/note-names';
import type { NoteMark } from './note-mark';
import { middleOf, rim } from './pan-drawing-geometry';

/** The oval that shows the keyboard's focus, and the one of a chosen note, lie this far outside the note's own. */
const focusGap = 2.5;
/** Size of the letters where a drum is as wide as the screen, in drawing units. */
const letters = { name: 12, mark: 10.5, least: 6.5 };
/** Width of a bold letter for its size, about. */
const letterWidth = 0.56;

export function NoteShape({
  place,
  mark = null,
  columns = 1,
}: {
  readonly place: NotePlace;
  readonly mark?: NoteMark | null;
  /** Drums side by side are drawn smaller, and their letters and lines larger to make up for it. */
  readonly columns?: number;
}) {
  const { x, y } = middleOf(place);
  const [rx, ry] = [rim * place.along, rim * place.across];
  const onRing = `translate(${x} ${y}) rotate(${place.clock * 30})`;
  const text = mark?.text ?? '';
  const nameSize = letters.name * columns;
  const markSize = markSizeFor(place, text) * columns;
  const gap = focusGap * columns;
  return (
    <>
      <ellipse class="oval-focus" rx={rx + gap} ry={ry + gap} transform={onRing} />
      <ellipse class="field-oval" rx={rx} ry={ry} transform={onRing} />
      {mark?.shape === 'half' && (
        <path class="oval-half" d={`M${-rx} 0A${rx} ${ry} 0 0 0 ${rx} 0Z`} transform={onRing} />
      )}
      {mark?.shape === 'crossed' && (
        <path
          class="oval-cross"
          d={`M${x - 0.6 * ry} ${y - 0.6 * ry}l${1.2 * ry} ${1.2 * ry}m0 ${-1.2 * ry}l${-1.2 * ry} ${1.2 * ry}`}
        />
      )}
      <text
        x={x}
        y={y + (text === '' ? 0.35 * nameSize : -0.08 * nameSize)}
        text-anchor="middle"
        style={{ fontSize: `${nameSize}px` }}
      >
        {displayName(place.note)}
      </text>
      {text !== '' && (
        <text
          class="mark-text"
          x={x}
          y={y + 0.85 * letters.mark * columns}
          text-anchor="middle"
          style={{ fontSize: `${markSize}px` }}
        >
          {text}
        </text>
      )}
    </>
  );
}

/** Classes of the element around a note's shape. */
export const noteClasses = (mark: NoteMark | null, isChosen: boolean): string =>
  [
    'note',
    isChosen ? 'chosen' : '',
    mark ? `marked shape-${mark.shape} tone-${mark.tone}` : '',
  ].join(' ');

/** As large as the oval is wide across the screen, for one column. */
function markSizeFor({ along, across, clock }: NotePlace, text: string): number {
  const turn = (clock * Math.PI) / 6;
  const half = rim * Math.hypot(along * Math.cos(turn), across * Math.sin(turn));
  const fitting = (1.8 * half) / (letterWidth * Math.max(1, text.length));
  return Math.min(letters.mark, Math.max(letters.least, fitting));
}
