// A pan as the player sees it: every note an oval that can be tapped or reached by keyboard.
import type { Drum, NotePlace, PanLayout } from '../../domain/pans/layout';
import { displayName } from '../../domain/tuning/note-names';
import type { MidiNote } from '../../domain/tuning/units';
import { drawnRadius, middleOf, type Point, rim, touchArea } from './pan-drawing-geometry';

/** The oval that shows the keyboard's focus lies this far outside the note's own, in drawing units. */
const focusGap = 2.5;

export function PanDrawing({
  layout,
  label,
  chosen,
  onNote,
}: {
  readonly layout: PanLayout;
  readonly label: (note: string) => string;
  readonly chosen: MidiNote | null;
  readonly onNote: (note: MidiNote) => void;
}) {
  return (
    <>
      {layout.drums.map((drum) => (
        // biome-ignore lint/a11y/useSemanticElements: an SVG drawing cannot be a fieldset element
        <svg
          key={drum.name}
          class="pan-drawing"
          viewBox={`${-drawnRadius} ${-drawnRadius} ${2 * drawnRadius} ${2 * drawnRadius}`}
          role="group"
          aria-label={layout.name}
        >
          <circle r={rim} class="rim" />
          {drum.notes.map((place) => (
            <NoteButton
              key={place.note}
              place={place}
              touch={touchAreaOf(place, drum)}
              label={label(displayName(place.note))}
              chosen={place.note === chosen}
              onNote={onNote}
            />
          ))}
        </svg>
      ))}
    </>
  );
}

const touchAreaOf = (place: NotePlace, drum: Drum): readonly Point[] =>
  touchArea(middleOf(place), drum.notes.filter((other) => other !== place).map(middleOf));

function NoteButton({
  place,
  touch,
  label,
  chosen,
  onNote,
}: {
  readonly place: NotePlace;
  readonly touch: readonly Point[];
  readonly label: string;
  readonly chosen: boolean;
  readonly onNote: (note: MidiNote) => void;
}) {
  const { x, y } = middleOf(place);
  const onRing = `translate(${x} ${y}) rotate(${place.clock * 30})`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG shape cannot be a button element
    <g
      role="button"
      tabindex={0}
      aria-label={label}
      class={`note ${chosen ? 'chosen' : ''}`}
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
      <polygon class="touch" points={touch.map((corner) => `${corner.x},${corner.y}`).join(' ')} />
      <ellipse
        class="oval-focus"
        rx={rim * place.along + focusGap}
        ry={rim * place.across + focusGap}
        transform={onRing}
      />
      <ellipse
        class="field-oval"
        rx={rim * place.along}
        ry={rim * place.across}
        transform={onRing}
      />
      <text x={x} y={y + 4} text-anchor="middle">
        {displayName(place.note)}
      </text>
    </g>
  );
}
