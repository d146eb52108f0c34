// A pan as the player sees it: every note an oval that can be tapped or reached by keyboard.
import type { NotePlace, PanLayout } from '../../domain/pans/layout';
import { displayName } from '../../domain/tuning/note-names';
import type { MidiNote } from '../../domain/tuning/units';

const rim = 160;

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
          viewBox={`${-rim - 6} ${-rim - 6} ${2 * rim + 12} ${2 * rim + 12}`}
          role="group"
          aria-label={layout.name}
        >
          <circle r={rim} class="rim" />
          {drum.notes.map((place) => (
            <NoteButton
              key={place.note}
              place={place}
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

function NoteButton({
  place,
  label,
  chosen,
  onNote,
}: {
  readonly place: NotePlace;
  readonly label: string;
  readonly chosen: boolean;
  readonly onNote: (note: MidiNote) => void;
}) {
  // Clock hours run clockwise from 12 at the far side; the player stands at 6.
  const angle = (place.clock * Math.PI) / 6;
  const x = rim * place.radius * Math.sin(angle);
  const y = -rim * place.radius * Math.cos(angle);
  const turn = place.clock * 30;
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
      <ellipse
        rx={rim * place.along}
        ry={rim * place.across}
        transform={`translate(${x} ${y}) rotate(${turn})`}
      />
      <text x={x} y={y + 4} text-anchor="middle">
        {displayName(place.note)}
      </text>
    </g>
  );
}
