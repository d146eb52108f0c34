import { describe, expect, it } from 'vitest';
import { areRestrokes } from '../../../src/dsp/onsets/restrokes';

describe('rises inside the sound of one strike', () => {
  it('are beats as long as they are small, and another stroke where one is large', () => {
    expect(areRestrokes([])).toBe(false);
    expect(areRestrokes([6.9, 6.4, 5.3, 5, 3.3])).toBe(false);
    expect(areRestrokes([2, 12])).toBe(true);
  });

  it('are a roll where three are large together', () => {
    expect(areRestrokes([7, 9, 8])).toBe(true);
    // A single strike on a lead whose partials exchange energy twelve times a second.
    expect(areRestrokes([8.7, 6.4, 6.1, 5.7, 3.1, 3.1])).toBe(false);
    expect(areRestrokes([8, 3, 2])).toBe(false);
  });
});
