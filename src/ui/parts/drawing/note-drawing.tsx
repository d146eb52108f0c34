// The note as an oval: target dashed, measured shape solid, filled when everything is true.

import type { Reading } from '../../../domain/reading/reading';
import { goodTolerances } from '../../../domain/tuning/tolerances';
import type { Cents } from '../../../domain/tuning/units';
import { isOutside, verdictOn } from '../../../domain/tuning/verdict';
import { measuredOval, targetOval } from './note-drawing-geometry';

const middle = { x: 166, y: 103 };

const tone = (cents: Cents, tolerance: Cents): string =>
  !isOutside(cents, tolerance) ? 'true' : cents < 0 ? 'low' : 'high';

/** The drawing shows all partials, whether or not the note is judged by them. */
const isAllTrue = (reading: Reading): boolean =>
  verdictOn(reading, { ...goodTolerances, highestWithPartials: reading.note }).kind === 'aligned';

export function NoteDrawing({ reading }: { readonly reading: Reading | null }) {
  // Two lines at the octave: the long axis waits until it is known which one is the note's own.
  const octave = reading?.octaveRival ? null : (reading?.octave ?? null);
  const aligned = reading !== null && !reading.walking && isAllTrue(reading);
  // Within tolerance the shape sits on the outline: small differences are not for the eye.
  const oval = aligned
    ? targetOval
    : reading
      ? measuredOval(
          reading.fundamental.cents,
          octave?.centsFromOwn ?? null,
          reading.third?.centsFromOwn ?? null,
        )
      : null;
  const whole = reading ? tone(reading.fundamental.cents, goodTolerances.main) : 'true';
  const shape = aligned ? 'true' : whole;
  return (
    <svg class="note-drawing" viewBox="0 0 332 206" aria-hidden="true">
      {reading && oval && (
        <>
          <ellipse
            cx={middle.x}
            cy={middle.y}
            rx={oval.rx}
            ry={oval.ry}
            class={`oval ${shape} ${aligned ? 'filled' : ''}`}
          />
          {octave && (
            <line
              x1={middle.x - oval.rx}
              x2={middle.x + oval.rx}
              y1={middle.y}
              y2={middle.y}
              class={`axis ${aligned ? 'cut' : tone(octave.centsFromOwn, goodTolerances.main)}`}
            />
          )}
          {reading.third && (
            <line
              x1={middle.x}
              x2={middle.x}
              y1={middle.y - oval.ry}
              y2={middle.y + oval.ry}
              class={`axis ${aligned ? 'cut' : tone(reading.third.centsFromOwn, goodTolerances.third)}`}
            />
          )}
        </>
      )}
      <ellipse cx={middle.x} cy={middle.y} rx={targetOval.rx} ry={targetOval.ry} class="target" />
    </svg>
  );
}
