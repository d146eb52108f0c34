// Where the course of a partial lies in its picture.
import type { PartMoment } from '../../../domain/measurement/strike-inside';

export const courseSize = { width: 320, height: 72 } as const;
/** Half the height, cents, at least: a true partial must look true. */
const leastReach = 15;
/** Moments fainter than this are not drawn: their pitch is that of the noise, dB. */
const faintest = -45;
/** Thickness of the loudest moment and of the faintest. */
const thickest = 14;
const thinnest = 1.5;
/** The filter needs so long after the strike before its pitch means anything, s. */
const drawnFrom = 0.03;

export const isDrawn = ({ at, levelDb }: PartMoment): boolean =>
  at >= drawnFrom && levelDb > faintest;

/** Cents from the middle to the edge, the same for all parts of a strike. */
export function reachOf(courses: readonly (readonly PartMoment[])[], values: readonly number[]) {
  const drawn = courses.flat().filter(({ levelDb, at }) => levelDb > -30 && at > drawnFrom);
  const most = Math.max(...[...drawn.map(({ cents }) => cents), ...values].map(Math.abs), 0);
  return Math.min(100, Math.max(leastReach, 5 * Math.ceil((1.15 * most) / 5)));
}

export const yOf = (cents: number, reach: number): number => {
  const half = courseSize.height / 2;
  return half - (half - thickest / 2) * Math.max(-1, Math.min(1, cents / reach));
};
export const xOf = (at: number, length: number): number => (courseSize.width * at) / length;

/** The outline of a line that is as thick as the partial is loud; empty where nothing is drawn. */
export function courseOutline(
  course: readonly PartMoment[],
  reach: number,
  length: number,
): string {
  const drawn = course.filter(isDrawn);
  const edge = (side: 1 | -1) =>
    drawn.map(({ at, cents, levelDb }) => {
      const thick = thinnest + (thickest - thinnest) * (1 - levelDb / faintest);
      const y = yOf(cents, reach) + (side * thick) / 2;
      return `${xOf(at, length).toFixed(1)},${y.toFixed(1)}`;
    });
  return [...edge(-1), ...edge(1).reverse()].join(' ');
}
