// The course of one partial: up is sharp, thick is loud; two dashed lines where there are two.
import type { PartInside } from '../../../domain/measurement/strike-inside';
import { courseOutline, courseSize, xOf, yOf } from './part-course-geometry';

const { width, height } = courseSize;

export function PartCourse({
  part,
  reach,
  length,
}: {
  readonly part: PartInside;
  /** Cents from the middle to the edge. */
  readonly reach: number;
  /** Of the whole picture, s. */
  readonly length: number;
}) {
  const { measured, rival, cents, course } = part;
  const { window } = measured;
  const lines = [{ measured, cents }, ...(rival ? [rival] : [])];
  return (
    <svg class="part-course" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {window && (
        <rect
          class="measured"
          x={xOf(window.from, length)}
          width={Math.max(0, xOf(Math.min(window.to, length) - window.from, length))}
          y="0"
          height={height}
        />
      )}
      <line class="wanted" x1="0" x2={width} y1={height / 2} y2={height / 2} />
      <polygon class="course" points={courseOutline(course, reach, length)} />
      {rival &&
        lines.map((line) => (
          <line
            key={line.measured.hz}
            class="line"
            x1={xOf(line.measured.window?.from ?? 0, length)}
            x2={xOf(Math.min(line.measured.window?.to ?? length, length), length)}
            y1={yOf(line.cents, reach)}
            y2={yOf(line.cents, reach)}
          />
        ))}
    </svg>
  );
}
