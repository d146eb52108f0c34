// All drums of a pan in small, one beside the other: a tap shows that drum as large as the screen.
import type { PanLayout } from '../../../domain/pans/layout';
import type { MidiNote } from '../../../domain/tuning/units';
import { layoutWords } from '../../words/layout-words';
import { drumViewBox } from './drum-drawing';
import type { MarkOf } from './note-mark';
import { noteClasses } from './note-shape';
import { drawnMiddle, rim } from './pan-drawing-geometry';

export function DrumTabs({
  layout,
  shown,
  chosen,
  markOf,
  onShow,
}: {
  readonly layout: PanLayout;
  readonly shown: number;
  readonly chosen: MidiNote | null;
  readonly markOf?: MarkOf<MidiNote> | undefined;
  readonly onShow: (drum: number) => void;
}) {
  return (
    <fieldset class={`drum-tabs ${rowClass(layout.drums.length)}`}>
      <legend class="only-spoken">{layoutWords.drums}</legend>
      {layout.drums.map((drum, k) => (
        <button key={k} type="button" aria-pressed={k === shown} onClick={() => onShow(k)}>
          <svg viewBox={drumViewBox} aria-hidden="true">
            <circle r={rim} class="rim" />
            {drum.notes.map((place) => {
              const { x, y } = drawnMiddle(place);
              return (
                <g
                  key={place.note}
                  class={noteClasses(markOf?.(place.note) ?? null, place.note === chosen)}
                >
                  <ellipse
                    class="field-oval"
                    rx={rim * place.along}
                    ry={rim * place.across}
                    transform={`translate(${x} ${y}) rotate(${place.clock * 30})`}
                  />
                </g>
              );
            })}
          </svg>
          <span>{drum.name}</span>
        </button>
      ))}
    </fieldset>
  );
}

const rowClass = (drums: number): string =>
  drums <= 4 ? '' : drums % 4 === 0 ? 'per-row-4' : 'per-row-3';
