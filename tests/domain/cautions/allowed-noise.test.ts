import { describe, expect, it } from 'vitest';
import { allowedMinutes, tableLevels } from '../../../src/domain/cautions/allowed-noise';

/** NIOSH, Criteria for a Recommended Standard: Occupational Noise Exposure, Publication 98-126 (1998), Table 1-1. */
const published: readonly (readonly [level: number, minutes: number])[] = [
  [85, 8 * 60],
  [88, 4 * 60],
  [91, 2 * 60],
  [94, 60],
  [97, 30],
  [100, 15],
];

describe('the time that NIOSH recommends at most', () => {
  it.each(published)('at %i dB(A) is %i minutes, as in the published table', (level, minutes) => {
    expect(allowedMinutes(level)).toBeCloseTo(minutes, 9);
  });

  it('is shown for the levels of the published table', () => {
    expect(tableLevels).toEqual(published.map(([level]) => level));
  });

  it('halves with every 3 dB between the levels of the table, too', () => {
    // 86 dB(A): 480 / 2^(1/3) = 381 minutes (6 h 21 min in the published table).
    expect(Math.round(allowedMinutes(86))).toBe(6 * 60 + 21);
    expect(allowedMinutes(92.5)).toBeCloseTo(2 * allowedMinutes(95.5), 9);
  });
});
