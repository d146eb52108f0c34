// What is refused as clipped, and what only just fits.
import { describe, expect, it } from 'vitest';
import { isClipped } from '../../../src/dsp/faults/sound-faults';

const rate = 44_100;
/** A quarter of a second of a sine of this peak, cut at `limit`. */
const sine = (hz: number, peak: number, limit = 1): Float32Array =>
  Float32Array.from({ length: rate / 4 }, (_, n) =>
    Math.max(-limit, Math.min(limit, peak * Math.sin((2 * Math.PI * hz * n) / rate))),
  );
const clipped = (samples: Float32Array): boolean => isClipped(samples, 0, samples.length);

describe('clipping', () => {
  it('is a flat top at full scale, and one a little below it', () => {
    for (const hz of [150, 262, 700]) {
      expect(clipped(sine(hz, 1.3, 1)), `${hz}`).toBe(true);
      expect(clipped(sine(hz, 1.3, 0.99)), `${hz}`).toBe(true);
    }
  });

  it('is no round top that just fits, as the softest strikes of a low note may have', () => {
    for (const hz of [262, 370, 700]) expect(clipped(sine(hz, 0.995)), `${hz}`).toBe(false);
  });

  it('is a top at the very end of the scale, however round', () => {
    expect(clipped(sine(262, 1))).toBe(true);
  });
});
