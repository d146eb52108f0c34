// How large the name and the number of a note can be written inside its oval.
import type { NotePlace } from '../../../domain/pans/layout';
import { rim } from './pan-drawing-geometry';

/** A row of letters: where its capitals begin and end, in its own size below the middle of the oval. */
export interface LetterRow {
  readonly top: number;
  readonly foot: number;
}

/** The capitals of the condensed face are 0.7 of its size high. */
const capital = 0.7;
const rowEndingAt = (foot: number): LetterRow => ({ top: foot - capital, foot });

/** Alone in its oval; above the middle; below it. The line of a half filled oval lies between the last two. */
export const letterRows = {
  alone: rowEndingAt(0.35),
  upper: rowEndingAt(-0.14),
  lower: rowEndingAt(0.86),
};

/** Half the line of an oval, drawing units for one column. */
const halfLine = 1.25;
/** Widths in the condensed face, of its size: a digit or a capital, and what is narrower (measured on its letters). */
const wide = 0.48;
const narrow = 0.3;

const widthOf = (text: string): number =>
  [...text].reduce((sum, letter) => sum + (' 1i♭'.includes(letter) ? narrow : wide), 0);

/** The largest size of `text` in `row` that no line of its note's oval touches, drawing units. */
export function roomForLetters(
  { along, across, clock }: NotePlace,
  text: string,
  row: LetterRow,
  columns = 1,
): number {
  const turn = (clock * Math.PI) / 6;
  const rx = rim * along - halfLine * columns;
  const ry = rim * across - halfLine * columns;
  const half = widthOf(text) / 2;
  /** 1 where a corner of letters of size 1 lies on the oval; it grows with the letters. */
  const reach = [-half, half].flatMap((x) =>
    [row.top, row.foot].map((y) =>
      Math.hypot(
        (x * Math.cos(turn) + y * Math.sin(turn)) / rx,
        (y * Math.cos(turn) - x * Math.sin(turn)) / ry,
      ),
    ),
  );
  return 1 / Math.max(...reach);
}

/** From the middle of a note's oval to its edge at `angle` (0 is right, down is positive), drawing units. */
export function edgeOf({ along, across, clock }: NotePlace, angle: number): number {
  const own = angle - (clock * Math.PI) / 6;
  return rim / Math.hypot(Math.cos(own) / along, Math.sin(own) / across);
}
