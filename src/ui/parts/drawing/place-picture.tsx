// The oval of a note with the places marked where blows fall. Filled marks are struck from above, open ones from below.
import type { BlowWhere } from '../../../domain/records/blow-places';
import { placeArrows, placeSpots } from './place-geometry';
import './place-picture.css';

export function PlacePicture({ places }: { readonly places: readonly BlowWhere[] }) {
  return (
    <svg class="place-picture" viewBox="0 0 100 70" aria-hidden="true">
      <ellipse class="place-field" cx="50" cy="35" rx="42" ry="29" />
      {places.map(({ place, side }) => (
        <g key={`${place} ${side}`} class={`place-${side}`}>
          {place === 'border' && <ellipse class="place-line" cx="50" cy="35" rx="42" ry="29" />}
          {placeArrows[place] && <path class="place-line" d={placeArrows[place]} />}
          {placeSpots[place].map(([x, y]) => (
            <circle key={`${x} ${y}`} class="place-spot" cx={x} cy={y} r="5" />
          ))}
        </g>
      ))}
    </svg>
  );
}
