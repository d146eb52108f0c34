// Where the pan was hit: a tap anywhere on the drawing, or a note chosen from a list.
import type { PanLayout } from '../../../domain/pans/layout';
import { notesOf } from '../../../domain/pans/layout';
import { isInside, middleOfNote, spotAt } from '../../../domain/pans/note-outline';
import type { ImpactPlace, ImpactPoint } from '../../../domain/records/impact-place';
import { displayName } from '../../../domain/tuning/note-names';
import { midiNote } from '../../../domain/tuning/units';
import { knockWords } from '../../words/fall/knock-words';
import { drumViewBox } from '../drawing/drum-drawing';
import { NoteShape } from '../drawing/note-shape';
import { drawnMiddle, rim } from '../drawing/pan-drawing-geometry';

export function ImpactField({
  layout,
  impact,
  onImpact,
}: {
  readonly layout: PanLayout;
  readonly impact: ImpactPlace | null;
  readonly onImpact: (impact: ImpactPlace | null) => void;
}) {
  const point = impact && pointOf(layout, impact);
  const isAlone = layout.drums.length === 1;
  return (
    <section class="field impact" aria-labelledby="impact">
      <h2 id="impact">{knockWords.whereTitle}</h2>
      <p>{knockWords.whereHint}</p>
      <div class={isAlone ? 'impact-one' : 'impact-drums'}>
        {layout.drums.map((drum, k) => (
          <figure key={k}>
            {/* The list below does the same for those who do not tap. */}
            <svg
              class="impact-drum"
              viewBox={drumViewBox}
              aria-hidden="true"
              data-drum={k}
              onClick={(event) => onImpact(tappedPoint(event, k))}
            >
              <circle r={rim} class="rim" />
              {drum.notes.map((place) => (
                <g key={place.note} class="note">
                  <NoteShape place={place} columns={isAlone ? 1 : 2} />
                </g>
              ))}
              {point?.drum === k && <Mark point={point} />}
            </svg>
            {!isAlone && <figcaption>{drum.name}</figcaption>}
          </figure>
        ))}
      </div>
      <label class="field">
        <span>{knockWords.whereNote}</span>
        <select
          value={nearestNote(layout, point) ?? ''}
          onChange={({ currentTarget: { value } }) =>
            onImpact(value === '' ? null : { kind: 'note', note: midiNote(Number(value)) })
          }
        >
          <option value="">{knockWords.unknown}</option>
          {[...new Set(notesOf(layout))].map((note) => (
            <option key={note} value={note}>
              {displayName(note)}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
}

/** A burst of four strokes: no note looks like it. */
function Mark({ point }: { readonly point: ImpactPoint }) {
  const { x, y } = drawnMiddle({
    ...point,
    note: midiNote(0),
    ring: 'outer',
    along: 0.1,
    across: 0.1,
  });
  return (
    <g class="impact-mark" transform={`translate(${x} ${y})`}>
      <circle r={9} />
      <path d="M-24 0h13M11 0h13M0-24v13M0 11v13" />
    </g>
  );
}

function tappedPoint(event: MouseEvent, drum: number): ImpactPlace | null {
  const svg = event.currentTarget as SVGSVGElement;
  const toScreen = svg.getScreenCTM();
  if (!toScreen) return null;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(toScreen.inverse());
  const { clock, radius } = spotAt([x / rim, y / rim]);
  // A tap beside the drum means its rim.
  return { kind: 'point', drum, clock, radius: Math.min(1, radius) };
}

function pointOf(layout: PanLayout, impact: ImpactPlace): ImpactPoint | null {
  if (impact.kind === 'point') return impact;
  for (const [drum, { notes }] of layout.drums.entries()) {
    const place = notes.find(({ note }) => note === impact.note);
    if (place) return { kind: 'point', drum, clock: place.clock, radius: place.radius };
  }
  return null;
}

/** The note whose oval holds the point, or whose middle is nearest to it. */
function nearestNote(layout: PanLayout, point: ImpactPoint | null): number | null {
  const notes = (point && layout.drums[point.drum]?.notes) ?? [];
  if (!point || notes.length === 0) return null;
  const at = middleOfNote(point);
  const away = (place: (typeof notes)[number]): number => {
    const [x, y] = middleOfNote(place);
    return isInside(place, at) ? 0 : Math.hypot(x - at[0], y - at[1]);
  };
  return [...notes].sort((one, other) => away(one) - away(other))[0]?.note ?? null;
}
