// Where the strikes of a bench lie on the drawing of the trail: from left to right in time, from flat below to sharp above.

/** One partial at one strike, cents from its target; null: not heard. `step` counts the sets of blows before it. */
export interface TrailStrike {
  readonly step: number;
  readonly cents: number | null;
}

export interface TrailMark {
  readonly x: number;
  readonly y: number;
  readonly cents: number;
}

export interface TrailLane {
  readonly marks: readonly TrailMark[];
  /** Where sets of blows fell. */
  readonly blows: readonly number[];
  /** Heights of the upper and the lower limit. */
  readonly limits: readonly [upper: number, lower: number];
}

export const trailSize = { width: 332, height: 60, left: 10, right: 322, middle: 30, reach: 24 };

/** The farthest that is drawn in proportion is so many limits away; farther ones lie at the edge. */
const leastReach = 2;

/** The lane of one partial. `limit`: how far off is good, cents. */
export function trailLane(strikes: readonly TrailStrike[], limit: number): TrailLane {
  const { left, right, middle, reach } = trailSize;
  const farthest = Math.max(
    leastReach * limit,
    ...strikes.map(({ cents }) => Math.abs(cents ?? 0)),
  );
  const yOf = (cents: number): number => middle - (reach * cents) / farthest;
  // One mark stands in the middle; more are spread over the whole width.
  const gap = strikes.length > 1 ? (right - left) / (strikes.length - 1) : 0;
  const xOf = (k: number): number => (strikes.length > 1 ? left + gap * k : (left + right) / 2);
  return {
    marks: strikes.flatMap(({ cents }, k) =>
      cents === null ? [] : [{ x: xOf(k), y: yOf(cents), cents }],
    ),
    blows: strikes.flatMap(({ step }, k) => {
      const before = strikes[k - 1];
      return before && before.step < step ? [xOf(k) - gap / 2] : [];
    }),
    limits: [yOf(limit), yOf(-limit)],
  };
}
