// One note of a drum as it is drawn: its oval, what it is marked with, its name.
import type { NotePlace } from '../../../domain/pans/layout';
import { displayName } from '../../../domain/tuning/note-names';
import { edgeOf, letterRows, roomForLetters } from './letter-room';
import type { NoteMark } from './note-mark';
import { drawnMiddle, rim } from './pan-drawing-geometry';

/** The oval that shows the keyboard's focus, and the one of a chosen note, lie this far outside the note's own. */
const focusGap = 2.5;
/**
 * Size of the letters where a drum is as wide as the screen, in drawing units: at least 12 px on the narrowest drawing
 * of a phone that is 360 px wide, which is 326 px for 325 units.
 */
const letters = { least: 12, name: 16 };
/** Letters may be a little wider than they are reckoned: a name that grows keeps off the line. */
const aLittleLess = 0.95;
/** Arms of the cross, outside the oval: inside they would run through the number. */
const armLength = 6;

export function NoteShape({
  place,
  mark = null,
  columns = 1,
  lettersFor = columns,
}: {
  readonly place: NotePlace;
  readonly mark?: NoteMark | null;
  /** Drums side by side are drawn smaller, and their letters and lines larger to make up for it. */
  readonly columns?: number;
  /** The same for the letters alone, where a drum is drawn smaller than its columns. */
  readonly lettersFor?: number;
}) {
  const { x, y } = drawnMiddle(place);
  const [rx, ry] = [rim * place.along, rim * place.across];
  const onRing = `translate(${x} ${y}) rotate(${place.clock * 30})`;
  const least = letters.least * lettersFor;
  const room = mark ? roomForLetters(place, mark.text, letterRows.lower, columns) : 0;
  // Too small to be read is not written: the shape and the spoken name of the note say it.
  const text = mark && room >= least ? mark.text : '';
  const name = displayName(place.note);
  const isHalf = mark?.shape === 'half';
  const row = text !== '' || isHalf ? letterRows.upper : letterRows.alone;
  const nameRoom = aLittleLess * roomForLetters(place, name, row, columns);
  const gap = focusGap * columns;
  return (
    <>
      <ellipse class="oval-focus" rx={rx + gap} ry={ry + gap} transform={onRing} />
      <ellipse class="field-oval" rx={rx} ry={ry} transform={onRing} />
      {isHalf && <path class="oval-half" d={lowerHalf(place)} />}
      {mark?.shape === 'crossed' && <path class="oval-cross" d={crossArms(place, columns)} />}
      <text
        x={x}
        y={y}
        dy={`${row.foot}em`}
        text-anchor="middle"
        style={{
          fontSize: growing(
            Math.max(least, Math.min(letters.name * lettersFor, nameRoom)),
            nameRoom,
          ),
        }}
      >
        {name}
      </text>
      {text !== '' && (
        <text
          class="mark-text"
          x={x}
          y={y}
          dy={`${letterRows.lower.foot}em`}
          text-anchor="middle"
          style={{ fontSize: growing(least, room) }}
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

/** What of the oval lies below its middle on the screen: its edge runs between the name and the number. */
function lowerHalf(place: NotePlace): string {
  const { x, y } = drawnMiddle(place);
  const side = edgeOf(place, 0);
  const [rx, ry] = [rim * place.along, rim * place.across];
  return `M${x - side} ${y}A${rx} ${ry} ${place.clock * 30} 0 0 ${x + side} ${y}Z`;
}

/** The ends of a cross that lies behind the oval. */
function crossArms(place: NotePlace, columns: number): string {
  const { x, y } = drawnMiddle(place);
  return [1, 3, 5, 7]
    .map((eighth) => (eighth * Math.PI) / 4)
    .map((angle) => {
      const from = edgeOf(place, angle) + columns;
      const to = from + armLength * columns;
      const at = (away: number) => `${x + away * Math.cos(angle)} ${y + away * Math.sin(angle)}`;
      return `M${at(from)}L${at(to)}`;
    })
    .join('');
}

/**
 * `usual` drawing units with the usual text size of the phone; larger with larger text, as far as the letters fit.
 * A rem in a drawing is as many units as the text size has pixels, 16 where nothing was changed.
 */
const growing = (usual: number, fitting: number): string =>
  `clamp(${usual.toFixed(2)}px, ${(usual / 16).toFixed(4)}rem, ${Math.max(usual, fitting).toFixed(2)}px)`;
