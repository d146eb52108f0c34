import { describe, expect, it } from 'vitest';
import { measuredOval, targetOval } from '../../../../src/ui/parts/drawing/note-drawing-geometry';

describe('the note drawing', () => {
  it('draws a flat note too large and a sharp one too small', () => {
    expect(measuredOval(-9, 0, 0).rx).toBeGreaterThan(targetOval.rx);
    expect(measuredOval(9, 0, 0).ry).toBeLessThan(targetOval.ry);
  });

  it('shows the octave along and the third partial across', () => {
    expect(measuredOval(0, -5, 0)).toEqual({ rx: targetOval.rx * 1.05, ry: targetOval.ry });
    expect(measuredOval(0, 0, 10)).toEqual({ rx: targetOval.rx, ry: targetOval.ry * 0.9 });
  });

  it('stays inside the drawing however far a note is off', () => {
    const largest = measuredOval(-900, -900, -900);
    expect(largest.rx).toBeLessThan(166);
    expect(largest.ry).toBeLessThan(103);
    expect(measuredOval(900, 900, 900).ry).toBeGreaterThan(20);
  });
});
