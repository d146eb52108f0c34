import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../src/domain/pans/low-c-lead';
import { noteName } from '../../src/domain/tuning/note-names';
import {
  drawnRadius,
  middleOf,
  type Point,
  touchArea,
} from '../../src/ui/parts/pan-drawing-geometry';

const places = lowCLead.drums.flatMap((drum) => drum.notes);
const middles = places.map(middleOf);

/** Distance from a point inside a shape to the nearest of its sides. */
const room = (shape: readonly Point[], { x, y }: Point): number =>
  Math.min(
    ...shape.map((from, k) => {
      const to = shape[(k + 1) % shape.length] ?? from;
      const length = Math.hypot(to.x - from.x, to.y - from.y);
      const away = (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
      return length < 1e-9 ? Number.POSITIVE_INFINITY : away / length;
    }),
  );

describe('the touch area of a note', () => {
  it('is a square where no neighbour is near', () => {
    const alone = touchArea({ x: 0, y: 0 }, [{ x: 500, y: 0 }]);
    expect(alone).toHaveLength(4);
    expect(room(alone, { x: 0, y: 0 })).toBeGreaterThan(22);
  });

  it('ends half way to a near neighbour', () => {
    const shared = touchArea({ x: 0, y: 0 }, [{ x: 30, y: 0 }]);
    expect(Math.max(...shared.map(({ x }) => x))).toBeCloseTo(15, 9);
  });

  // WCAG 2.2, 2.5.5: 44 CSS px. The drawing is as wide as the screen.
  it.each([320, 360])('holds a finger of 44 px on a screen of %d px, on every note', (width) => {
    const scale = width / (2 * drawnRadius);
    places.forEach((place, k) => {
      const middle = middleOf(place);
      const area = touchArea(
        middle,
        middles.filter((_, other) => other !== k),
      );
      expect(room(area, middle) * scale, noteName(place.note)).toBeGreaterThanOrEqual(22);
    });
  });
});
