// The note as an oval: what moves while a partial sounds is lit.
import type { PartName } from '../../../domain/measurement/strike-inside';

/** Middle and half axes. */
const oval = { x: 160, y: 60, rx: 108, ry: 50 } as const;

export function MovingOval({ lit }: { readonly lit: PartName | null }) {
  const { x, y, rx, ry } = oval;
  const isLit = (part: PartName): string => (lit === part ? 'lit' : '');
  return (
    <svg class="moving-oval" viewBox="0 0 320 120" aria-hidden="true" data-lit={lit ?? ''}>
      <ellipse cx={x} cy={y} rx={rx} ry={ry} class={`whole ${isLit('fundamental')}`} />
      {[-1, 1].map((side) => (
        <g key={side}>
          <ellipse
            cx={x + side * 0.62 * rx}
            cy={y}
            rx={0.26 * rx}
            ry={0.5 * ry}
            class={`end ${isLit('octave')}`}
          />
          <ellipse
            cx={x}
            cy={y + side * 0.62 * ry}
            rx={0.3 * rx}
            ry={0.26 * ry}
            class={`end ${isLit('third')}`}
          />
        </g>
      ))}
    </svg>
  );
}
