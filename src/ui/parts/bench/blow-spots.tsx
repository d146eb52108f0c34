// The note as an oval with the places where blows fall: one tap says where.
import type { BlowPlace } from '../../../domain/records/blow-places';
import { benchWords } from '../../words/measuring/bench-words';
import './blow-spots.css';

type Spot = keyof typeof benchWords.spots;

/** Middles of the spots in percent of the drawing; an axis has two ends, and there are four corners. */
const spots: readonly { readonly place: Spot; readonly at: readonly [x: number, y: number] }[] = [
  { place: 'middle', at: [50, 50] },
  { place: 'long-ends', at: [12, 50] },
  { place: 'short-ends', at: [50, 14] },
  { place: 'corners', at: [26, 22] },
  { place: 'long-ends', at: [88, 50] },
  { place: 'short-ends', at: [50, 86] },
  { place: 'corners', at: [74, 22] },
  { place: 'corners', at: [26, 78] },
  { place: 'corners', at: [74, 78] },
];
/** Places that are lines and no spots. */
const lines = ['border', 'glancing-long', 'glancing-short'] as const;

export function BlowSpots({
  chosen,
  onChoose,
}: {
  readonly chosen: BlowPlace | null;
  readonly onChoose: (place: BlowPlace) => void;
}) {
  const seen = new Set<Spot>();
  return (
    <>
      <div class="blow-spots">
        <svg viewBox="0 0 332 232" aria-hidden="true">
          <ellipse class="spots-field" cx="166" cy="116" rx="140" ry="92" />
          <ellipse class="target" cx="166" cy="116" rx="140" ry="92" />
        </svg>
        {spots.map(({ place, at: [x, y] }) => {
          // The same place twice is one choice for those who do not see the drawing.
          const isAgain = seen.has(place);
          seen.add(place);
          return (
            <button
              key={`${x} ${y}`}
              type="button"
              class="spot"
              style={{ left: `${x}%`, top: `${y}%` }}
              data-place={place}
              aria-label={benchWords.places[place]}
              aria-pressed={chosen === place}
              {...(isAgain ? { 'aria-hidden': true, tabIndex: -1 } : {})}
              onClick={() => onChoose(place)}
            >
              {benchWords.spots[place]}
            </button>
          );
        })}
      </div>
      <div class="pair blow-lines">
        {lines.map((place) => (
          <button
            key={place}
            type="button"
            data-place={place}
            aria-pressed={chosen === place}
            onClick={() => onChoose(place)}
          >
            {benchWords.places[place]}
          </button>
        ))}
      </div>
    </>
  );
}
