// One value over time: a point for each reading with its bar of uncertainty, joined by a line.
import type { ComponentChildren } from 'preact';
import { signedCents } from '../../words/words';
import './time-chart.css';
import {
  barSigmas,
  type ChartValue,
  chartScale,
  heightOf,
  placeInTime,
} from './time-chart-geometry';

/** Lines differ in dash and in the shape of their points. */
export type ChartLook = 'round' | 'square' | 'triangle';

export function TimeChart({
  name,
  latest,
  spoken,
  look,
  values,
  from,
  to,
  good = null,
  least,
  isOneSided = false,
}: {
  readonly name: string;
  /** The newest value, beside the name. */
  readonly latest: string;
  /** The course in words, for those who do not see it. */
  readonly spoken: string;
  readonly look: ChartLook;
  readonly values: readonly ChartValue[];
  /** The same for all charts of a page. */
  readonly from: number;
  readonly to: number;
  /** Within ± this many cents it is good: shaded. */
  readonly good?: number | null;
  readonly least: number;
  readonly isOneSided?: boolean;
}) {
  const scale = chartScale(values, { least, isOneSided });
  const placed = values.map((value) => ({
    ...value,
    x: placeInTime(value.at, from, to),
    y: heightOf(value.cents, scale),
    top: heightOf(value.cents + barSigmas * value.sigmaCents, scale),
    bottom: heightOf(value.cents - barSigmas * value.sigmaCents, scale),
  }));
  return (
    <figure class={`time-chart look-${look}`}>
      <figcaption>
        <svg class="chart-key" viewBox="-18 -8 36 16" aria-hidden="true">
          <line x1="-18" x2="18" class="chart-line" />
          <path d={points[look]} class="chart-point" />
        </svg>
        <b>{name}</b> <span>{latest}</span>
      </figcaption>
      <div class="chart-plot">
        {scale.ticks.map((tick) => (
          <span key={tick} class="chart-tick" style={{ top: `${heightOf(tick, scale)}%` }}>
            {isOneSided ? tick : signedCents(tick)}
          </span>
        ))}
        <svg class="chart-area" role="img" aria-label={`${name}: ${spoken}`}>
          {good !== null && (
            <GoodBand top={heightOf(good, scale)} bottom={heightOf(-good, scale)} />
          )}
          {scale.ticks.map((tick) => {
            const y = `${heightOf(tick, scale)}%`;
            return (
              <line
                key={tick}
                class={tick === 0 ? 'chart-zero' : 'chart-grid'}
                x1="0"
                x2="100%"
                y1={y}
                y2={y}
              />
            );
          })}
          {placed.slice(1).map((point, k) => (
            <line
              key={point.at}
              class="chart-line"
              x1={`${placed[k]?.x}%`}
              y1={`${placed[k]?.y}%`}
              x2={`${point.x}%`}
              y2={`${point.y}%`}
            />
          ))}
          {placed.map(({ at, x, y, top, bottom, isProvisional }) => (
            <g key={at}>
              <line class="chart-bar" x1={`${x}%`} x2={`${x}%`} y1={`${top}%`} y2={`${bottom}%`} />
              <At x={x} y={y}>
                <path d={points[look]} class={`chart-point ${isProvisional ? 'hollow' : ''}`} />
              </At>
            </g>
          ))}
        </svg>
      </div>
    </figure>
  );
}

const points: Readonly<Record<ChartLook, string>> = {
  round: 'M-5 0a5 5 0 0 0 10 0a5 5 0 0 0 -10 0z',
  square: 'M-4.5 -4.5h9v9h-9z',
  triangle: 'M0 -6l6 10.5h-12z',
};

/** A drawing of fixed size at a place given in hundredths. */
const At = ({ x, y, children }: { x: number; y: number; children: ComponentChildren }) => (
  <svg x={`${x}%`} y={`${y}%`} class="chart-at" overflow="visible" aria-hidden="true">
    {children}
  </svg>
);

const GoodBand = ({ top, bottom }: { readonly top: number; readonly bottom: number }) => (
  <rect class="chart-good" x="0" width="100%" y={`${top}%`} height={`${bottom - top}%`} />
);
