// Pans without published places start from an arrangement of our own that a player corrects by dragging.
import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../../src/domain/pans/check-layout';
import { builtInLayouts } from '../../../src/domain/pans/layouts/built-in-layouts';

const started = builtInLayouts.filter(
  ({ kind, layout }) => kind === 'unplaced' && layout.drums.some(({ notes }) => notes.length > 0),
);

describe('the starting arrangement of a pan without published places', () => {
  it.each(started.map(({ layout }) => [layout.name, layout] as const))(
    'of %s has every note in place, the larger ones outside, in even steps along the rim',
    (_name, layout) => {
      const faults = checkLayout(layout).filter(({ kind }) => kind !== 'missing');
      expect(faults).toEqual([]);
      for (const { notes } of layout.drums) {
        const outer = notes.filter(({ ring }) => ring === 'outer');
        const steps = outer.slice(1).map(({ note }, k) => note - (outer[k]?.note ?? 0));
        // Whole tones on two drums, major thirds on four.
        expect(new Set(steps).size, 'kinds of steps').toBeLessThanOrEqual(1);
        const least = Math.min(...outer.map(({ along, across }) => along * across));
        for (const inner of notes.filter(({ ring }) => ring !== 'outer')) {
          expect(inner.along * inner.across, String(inner.note)).toBeLessThanOrEqual(least);
          expect(inner.note).toBeGreaterThan(Math.max(...outer.map(({ note }) => note)));
        }
        // A higher note of a ring is never larger than the one before.
        for (const [k, place] of outer.slice(1).entries()) {
          expect(place.along).toBeLessThanOrEqual(outer[k]?.along ?? 0);
        }
      }
    },
  );
});
