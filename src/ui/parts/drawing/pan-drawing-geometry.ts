// Where the notes of a drum are drawn, and which part of the drawing belongs to each note's finger.
import type { NotePlace, PanLayout } from '../../../domain/pans/layout';

export interface DrawnPoint {
  readonly x: number;
  readonly y: number;
}

/** Radius of the rim, in drawing units. */
export const rim = 160;
/** From the drum's middle to the edge of the drawing: half of the rim's line lies outside the rim. */
export const drawnRadius = rim + 2.5;
/** A touch area reaches this far from its note's middle, along and across the screen, unless a neighbour is nearer. */
const touchReach = 32;

/** The middle of a note's oval. Clock hours run clockwise from 12 at the far side; the player stands at 6. */
export function drawnMiddle(place: NotePlace): DrawnPoint {
  const angle = (place.clock * Math.PI) / 6;
  return {
    x: rim * place.radius * Math.sin(angle),
    y: -rim * place.radius * Math.cos(angle),
  };
}

/**
 * Corners of the area where a touch strikes `middle`: a square without all that lies nearer to one of `others`.
 * Where drums stand in `columns` they are drawn smaller, and the square is larger in drawing units.
 */
export function touchArea(
  middle: DrawnPoint,
  others: readonly DrawnPoint[],
  columns = 1,
): readonly DrawnPoint[] {
  const { x, y } = middle;
  const reach = touchReach * columns;
  let corners: readonly DrawnPoint[] = [
    { x: x - reach, y: y - reach },
    { x: x + reach, y: y - reach },
    { x: x + reach, y: y + reach },
    { x: x - reach, y: y + reach },
  ];
  for (const other of others) corners = nearerPart(corners, middle, other);
  return corners;
}

/** The part of a convex shape that lies nearer to `own` than to `other`. */
function nearerPart(
  corners: readonly DrawnPoint[],
  own: DrawnPoint,
  other: DrawnPoint,
): readonly DrawnPoint[] {
  /** Negative on the own side of the line half way between the two. */
  const side = (point: DrawnPoint): number =>
    (point.x - (own.x + other.x) / 2) * (other.x - own.x) +
    (point.y - (own.y + other.y) / 2) * (other.y - own.y);
  return corners.flatMap((corner, k) => {
    const next = corners[(k + 1) % corners.length] ?? corner;
    const here = side(corner);
    const there = side(next);
    const kept = here <= 0 ? [corner] : [];
    if (here <= 0 === there <= 0) return kept;
    const part = here / (here - there);
    return [
      ...kept,
      { x: corner.x + part * (next.x - corner.x), y: corner.y + part * (next.y - corner.y) },
    ];
  });
}

/** The narrowest screen, and what a finger needs on it (WCAG 2.2, 2.5.5), in CSS px. */
const narrowest = 320;
const finger = 44;
/** Between two drums side by side, CSS px. */
const drumGap = 8;

/**
 * How many drums stand side by side so that every note keeps 44 px for a finger on a screen of 320 px: 2 or 3; 1 if
 * they fit only one at a time, as large as the screen.
 */
export function columnsFor({ drums }: PanLayout): 1 | 2 | 3 {
  if (drums.length === 1) return 1;
  for (const columns of drums.length > 6 ? ([3, 2] as const) : ([2] as const)) {
    const pixels = (narrowest - (columns - 1) * drumGap) / columns;
    const unit = pixels / (2 * drawnRadius);
    if (drums.every(({ notes }) => roomBetween(notes) * unit >= finger)) return columns;
  }
  return 1;
}

/** The shortest distance between two notes, or twice that of a note from the edge, in drawing units. */
function roomBetween(notes: readonly NotePlace[]): number {
  const middles = notes.map(drawnMiddle);
  return Math.min(
    Number.POSITIVE_INFINITY,
    ...middles.flatMap(({ x, y }, k) => [
      2 * (drawnRadius - Math.max(Math.abs(x), Math.abs(y))),
      ...middles.slice(k + 1).map((other) => Math.hypot(other.x - x, other.y - y)),
    ]),
  );
}
