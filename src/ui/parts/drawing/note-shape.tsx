// One note of a drum as it is drawn: its oval, what it is marked with, its name.
import type { NotePlace } from '../../../domain/pans/layout';
import { displayName } from '../../../domain/tuning/note-names';
import type { NoteMark } from './note-mark';
import { drawnMiddle, rim } from './pan-drawing-geometry';

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
  const { x, y } = drawnMiddle(place);
  const [rx, ry] = [rim * place.along, rim * place.across];
  const onRing = `translate(${x} ${y}) rotate(${place.clock * 30})`;
  const text = mark?.text ?? '';
  const name = displayName(place.note);
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
        y={y}
        dy={text === '' ? '0.35em' : '-0.08em'}
        text-anchor="middle"
        style={{ fontSize: nameSize(place, name, text !== '', columns) }}
      >
        {name}
      </text>
      {text !== '' && (
        <text
          class="mark-text"
          x={x}
          y={y}
          dy="0.85em"
          text-anchor="middle"
          style={{ fontSize: markSize(place, text, columns) }}
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

/** Half the width and half the height of a note's oval on the screen, in drawing units. */
function halves({ along, across, clock }: NotePlace): {
  readonly wide: number;
  readonly high: number;
} {
  const turn = (clock * Math.PI) / 6;
  return {
    wide: rim * Math.hypot(along * Math.cos(turn), across * Math.sin(turn)),
    high: rim * Math.hypot(along * Math.sin(turn), across * Math.cos(turn)),
  };
}

/**
 * `usual` drawing units with the usual text size of the phone; larger with larger text, as far as the letters fit.
 * A rem in a drawing is as many units as the text size has pixels, 16 where nothing was changed.
 */
const growing = (usual: number, fitting: number): string =>
  `clamp(${usual.toFixed(2)}px, ${(usual / 16).toFixed(4)}rem, ${Math.max(usual, fitting).toFixed(2)}px)`;

function nameSize(place: NotePlace, name: string, isMarked: boolean, columns: number): string {
  const { wide, high } = halves(place);
  const fitting = Math.min(
    (1.35 * wide) / (letterWidth * name.length),
    (isMarked ? 0.85 : 1.5) * high,
  );
  return growing(letters.name * columns, fitting);
}

/** As large as the oval is wide across the screen, for one column. */
function markSize(place: NotePlace, text: string, columns: number): string {
  const { wide, high } = halves(place);
  const byWidth = (1.8 * wide) / (letterWidth * Math.max(1, text.length));
  const usual = Math.min(letters.mark, Math.max(letters.least, byWidth)) * columns;
  return growing(usual, Math.min(0.85 * byWidth, high));
}
