import { describe, expect, it } from 'vitest';
import { trailLane, trailSize } from '../../../../src/ui/parts/bench/trail-geometry';
import * as fc from '../../../properties';

const strikes = fc.array(
  fc.record({
    step: fc.nat({ max: 5 }),
    cents: fc.oneof(fc.constant(null), fc.double({ min: -200, max: 200, noNaN: true })),
  }),
  { minLength: 1, maxLength: 60 },
);

describe('the trail of a partial', () => {
  it('leads from left to right, sharp above and flat below the true line', () => {
    const { marks } = trailLane(
      [
        { step: 0, cents: -12 },
        { step: 1, cents: -4 },
        { step: 2, cents: 3 },
      ],
      5,
    );
    const { left, right, middle } = trailSize;
    expect(marks.map(({ x }) => x)).toEqual([left, (left + right) / 2, right]);
    expect(marks[0]?.y).toBeGreaterThan(marks[1]?.y ?? 0);
    expect(marks[1]?.y).toBeGreaterThan(middle);
    expect(marks[2]?.y).toBeLessThan(middle);
  });

  it('stays inside the drawing, and its limits lie where a mark at the limit would', () => {
    fc.assert(
      fc.property(strikes, fc.integer({ min: 1, max: 50 }), (all, limit) => {
        const { marks, limits } = trailLane(all, limit);
        const { left, right, middle, reach } = trailSize;
        for (const { x, y } of marks) {
          expect(x).toBeGreaterThanOrEqual(left - 1e-9);
          expect(x).toBeLessThanOrEqual(right + 1e-9);
          expect(Math.abs(y - middle)).toBeLessThanOrEqual(reach + 1e-9);
        }
        const lane = trailLane([...all, { step: 9, cents: limit }], limit);
        expect(lane.marks.at(-1)?.y).toBeCloseTo(lane.limits[0], 9);
        expect(limits[0] + limits[1]).toBeCloseTo(2 * middle, 9);
      }),
    );
  });

  it('shows blows between the strikes they fell between, and skips what was not heard', () => {
    const { marks, blows } = trailLane(
      [
        { step: 0, cents: -12 },
        { step: 0, cents: null },
        { step: 1, cents: -4 },
      ],
      5,
    );
    expect(marks).toHaveLength(2);
    expect(blows).toHaveLength(1);
    expect(blows[0]).toBeGreaterThan((trailSize.left + trailSize.right) / 2);
    expect(blows[0]).toBeLessThan(trailSize.right);
  });
});
