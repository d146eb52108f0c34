// One drum as the player sees it; its notes can be tapped or reached by keyboard where something comes of it.
import type { Drum, NotePlace } from '../../../domain/pans/layout';
import { displayName } from '../../../domain/tuning/note-names';
import type { MidiNote } from '../../../domain/tuning/units';
import type { MarkOf, NoteMark } from './note-mark';
import { NoteShape, noteClasses } from './note-shape';
import { type DrawnPoint, drawnMiddle, drawnRadius, rim, touchArea } from './pan-drawing-geometry';

export const drumViewBox = `${-drawnRadius} ${-drawnRadius} ${2 * drawnRadius} ${2 * drawnRadius}`;

export interface DrumDrawingProps {
  readonly drum: Drum;
  /** Name of the drawing for those who do not see it. */
  readonly name: string;
  readonly columns: 1 | 2 | 3;
  /** See `NoteShape`. */
  readonly lettersFor?: number;
  readonly label: (note: string, midi: MidiNote) => string;
  readonly chosen: MidiNote | null;
  readonly markOf: MarkOf<MidiNote> | undefined;
  readonly onNote: ((note: MidiNote) => void) | undefined;
  /** Where a tap on a note leads; a finger that scrolls taps nothing. */
  readonly hrefOf: ((note: MidiNote) => string) | undefined;
}

export function DrumDrawing(props: DrumDrawingProps) {
  const { drum, columns, lettersFor = columns, chosen, markOf, onNote, hrefOf } = props;
  return (
    <svg
      class={`pan-drawing columns-${columns}`}
      viewBox={drumViewBox}
      role={onNote || hrefOf ? 'group' : 'img'}
      aria-label={props.name}
    >
      <circle r={rim} class="rim" />
      {drum.notes.map((place) => {
        const mark = markOf?.(place.note) ?? null;
        if (hrefOf) {
          return (
            <a
              key={place.note}
              href={hrefOf(place.note)}
              aria-label={props.label(displayName(place.note), place.note)}
              class={noteClasses(mark, place.note === chosen)}
            >
              <TouchArea corners={touchAreaOf(place, drum, columns)} />
              <NoteShape {...{ place, columns, lettersFor, mark }} />
            </a>
          );
        }
        return onNote ? (
          <NoteButton
            key={place.note}
            place={place}
            touch={touchAreaOf(place, drum, columns)}
            columns={columns}
            lettersFor={lettersFor}
            label={props.label(displayName(place.note), place.note)}
            isChosen={place.note === chosen}
            mark={mark}
            onNote={onNote}
          />
        ) : (
          <g key={place.note} class={noteClasses(mark, place.note === chosen)}>
            <NoteShape {...{ place, columns, lettersFor, mark }} />
          </g>
        );
      })}
    </svg>
  );
}

const touchAreaOf = (place: NotePlace, drum: Drum, columns: number): readonly DrawnPoint[] =>
  touchArea(
    drawnMiddle(place),
    drum.notes.filter((other) => other !== place).map(drawnMiddle),
    columns,
  );

const TouchArea = ({ corners }: { readonly corners: readonly DrawnPoint[] }) => (
  <polygon class="touch" points={corners.map(({ x, y }) => `${x},${y}`).join(' ')} />
);

function NoteButton({
  place,
  touch,
  columns,
  lettersFor,
  label,
  isChosen,
  mark,
  onNote,
}: {
  readonly place: NotePlace;
  readonly touch: readonly DrawnPoint[];
  readonly columns: number;
  readonly lettersFor: number;
  readonly label: string;
  readonly isChosen: boolean;
  readonly mark: NoteMark | null;
  readonly onNote: (note: MidiNote) => void;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG shape cannot be a button element
    <g
      role="button"
      tabindex={0}
      aria-label={label}
      aria-current={isChosen ? 'true' : undefined}
      class={noteClasses(mark, isChosen)}
      onPointerDown={(event) => {
        if (event.button === 0) onNote(place.note);
      }}
      onClick={(event) => {
        // A screen reader's tap arrives as a click alone; a finger's click was struck on its way down.
        if (event.detail === 0) onNote(place.note);
      }}
      onKeyDown={(event) => {
        if (event.repeat || (event.key !== 'Enter' && event.key !== ' ')) return;
        event.preventDefault();
        onNote(place.note);
      }}
    >
      <TouchArea corners={touch} />
      <NoteShape {...{ place, columns, lettersFor, mark }} />
    </g>
  );
}
