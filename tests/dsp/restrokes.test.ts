import { describe, expect, it } from 'vitest';
import { areRestrokes } from '../../src/dsp/restrokes';

describe('rises inside the sound of one strike', () => {
  it('are beats as long as they are small, and another stroke where one is large', () => {
    expect(areRestrokes([])).toBe(false);
    expect(areRestrokes([6.9, 6.4, 5.3, 5, 3.3])).toBe(false);
    expect(areRestrokes([2, 12])).toBe(true);
  });

  it('are a roll where three are large together', () => {
    expect(areRestrokes([5, 8, 6])).toBe(true);
    expect(areRestrokes([8, 3, 2])).toBe(false);
  });
});
