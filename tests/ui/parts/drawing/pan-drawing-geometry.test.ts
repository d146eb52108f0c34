import { describe, expect, it } from 'vitest';
import { builtInLayouts } from '../../../../src/domain/pans/layouts/built-in-layouts';
import { lowCLead } from '../../../../src/domain/pans/layouts/low-c-lead';
import { noteName } from '../../../../src/domain/tuning/note-names';
import {
  columnsFor,
  type DrawnPoint,
  drawnMiddle,
  drawnRadius,
  touchArea,
} from '../../../../src/ui/parts/drawing/pan-drawing-geometry';

const places = lowCLead.drums.flatMap((drum) => drum.notes);
const middles = places.map(drawnMiddle);

/** Distance from a point inside a shape to the nearest of its sides. */
const room = (shape: readonly DrawnPoint[], { x, y }: DrawnPoint): number =>
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
      const middle = drawnMiddle(place);
      const area = touchArea(
        middle,
        middles.filter((_, other) => other !== k),
      );
      expect(room(area, middle) * scale, noteName(place.note)).toBeGreaterThanOrEqual(22);
    });
  });
});

describe('drums side by side', () => {
  const columns = Object.fromEntries(
    builtInLayouts.map(({ layout }) => [layout.id, columnsFor(layout)]),
  );

  it('are as many as leave room for a finger, at most three', () => {
    expect(columns).toEqual({
      'low-c-lead': 1,
      'high-d-lead': 1,
      'double-tenor': 1,
      'double-second': 1,
      'double-guitar': 1,
      'double-guitar-20': 1,
      'triple-guitar': 1,
      'triple-cello': 1,
      'four-cello': 1,
      quadrophonic: 1,
      'tenor-bass-20': 2,
      'tenor-bass-24': 2,
      'six-bass-b-flat': 2,
      'six-bass-b': 2,
      'nine-bass': 3,
      'twelve-bass': 3,
      own: 1,
    });
  });

  // WCAG 2.2, 2.5.5: 44 CSS px, on every note of every pan, on a screen of 320 px with 8 px between drums.
  it('leave every note of every pan 44 px', () => {
    for (const { layout } of builtInLayouts) {
      const across = columnsFor(layout);
      const scale = (320 - 8 * (across - 1)) / across / (2 * drawnRadius);
      for (const drum of layout.drums) {
        drum.notes.forEach((place, k) => {
          const middle = drawnMiddle(place);
          const others = drum.notes.filter((_, other) => other !== k).map(drawnMiddle);
          const area = touchArea(middle, others, across);
          const edge = drawnRadius - Math.max(Math.abs(middle.x), Math.abs(middle.y));
          const least = Math.min(room(area, middle), edge) * scale;
          expect(least, `${layout.id} ${noteName(place.note)}`).toBeGreaterThanOrEqual(22);
        });
      }
    }
  });
});
