// The oval of a note with the places marked where blows fall. Filled marks are struck from above, open ones from below.
import type { BlowPlace, BlowWhere } from '../../../domain/records/blow-places';
import './place-picture.css';

const middle: readonly Point[] = [[50, 35]];
type Point = readonly [x: number, y: number];

const spots: Readonly<Record<BlowPlace, readonly Point[]>> = {
  middle,
  'long-ends': [
    [14, 35],
    [86, 35],
  ],
  'short-ends': [
    [50, 12],
    [50, 58],
  ],
  corners: [
    [26, 19],
    [74, 19],
    [26, 51],
    [74, 51],
  ],
  border: [],
  'glancing-long': [],
  'glancing-short': [],
};

/** Arrows that point both ways: which way the partial goes is not known. */
const arrows: Partial<Record<BlowPlace, string>> = {
  'glancing-long': 'M14 35H86M22 29L14 35L22 41M78 29L86 35L78 41',
  'glancing-short': 'M50 12V58M44 20L50 12L56 20M44 50L50 58L56 50',
};

export function PlacePicture({ places }: { readonly places: readonly BlowWhere[] }) {
  return (
    <svg class="place-picture" viewBox="0 0 100 70" aria-hidden="true">
      <ellipse class="place-field" cx="50" cy="35" rx="42" ry="29" />
      {places.map(({ place, side }) => (
        <g key={`${place} ${side}`} class={`place-${side}`}>
          {place === 'border' && <ellipse class="place-line" cx="50" cy="35" rx="42" ry="29" />}
          {arrows[place] && <path class="place-line" d={arrows[place]} />}
          {spots[place].map(([x, y]) => (
            <circle key={`${x} ${y}`} class="place-spot" cx={x} cy={y} r="5" />
          ))}
        </g>
      ))}
    </svg>
  );
}
