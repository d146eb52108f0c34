// A pan in small, to be recognised: all its drums in one scale, each with the ovals of its notes.
import type { PanLayout } from '../../../domain/pans/layout';
import { drawnMiddle, drawnRadius, rim } from './pan-drawing-geometry';
import './pan-picture.css';

/** As they are stood: up to three beside each other, more in rows. */
const perRow = (drums: number): number =>
  drums <= 3 ? drums : drums === 4 ? 2 : drums > 9 ? 4 : 3;

export function PanPicture({ layout: { drums } }: { readonly layout: PanLayout }) {
  const columns = Math.max(1, perRow(drums.length));
  const rows = Math.max(1, Math.ceil(drums.length / columns));
  const size = 2 * drawnRadius;
  return (
    <svg class="pan-picture" viewBox={`0 0 ${size * columns} ${size * rows}`} aria-hidden="true">
      {drums.map(({ notes }, k) => (
        <g
          key={k}
          transform={`translate(${size * ((k % columns) + 0.5)} ${size * (Math.floor(k / columns) + 0.5)})`}
        >
          <circle r={rim} class="rim" />
          {notes.map((place) => {
            const { x, y } = drawnMiddle(place);
            return (
              <ellipse
                key={place.note}
                class="field-oval"
                rx={rim * place.along}
                ry={rim * place.across}
                transform={`translate(${x} ${y}) rotate(${place.clock * 30})`}
              />
            );
          })}
        </g>
      ))}
    </svg>
  );
}
