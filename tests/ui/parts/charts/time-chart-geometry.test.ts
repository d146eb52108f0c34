import { describe, expect, it } from 'vitest';
import {
  chartScale,
  heightOf,
  placeInTime,
} from '../../../../src/ui/parts/charts/time-chart-geometry';

const at = (...values: number[]) => values.map((cents) => ({ cents, sigmaCents: 0 }));

describe('the scale of a small chart', () => {
  it('holds 0 and at least what is asked for, in few round steps', () => {
    expect(chartScale(at(1, -2), { least: 10 })).toEqual({
      low: -10,
      high: 10,
      ticks: [-10, -5, 0, 5, 10],
    });
  });

  it('holds every value with its bar of three standard errors', () => {
    const { low, high, ticks } = chartScale([{ cents: -28, sigmaCents: 1 }], { least: 10 });
    expect(low).toBeLessThanOrEqual(-31);
    expect(high).toBeGreaterThanOrEqual(10);
    expect(ticks).toContain(0);
    expect(ticks.length).toBeLessThanOrEqual(5);
  });

  it('begins at 0 where nothing can be below it', () => {
    expect(chartScale(at(4.2, 2), { least: 5, isOneSided: true })).toEqual({
      low: 0,
      high: 6,
      ticks: [0, 2, 4, 6],
    });
  });

  it('holds whatever a damaged pan shows', () => {
    const { low, high, ticks } = chartScale(at(-4000, 3000), { least: 10 });
    expect(low).toBeLessThanOrEqual(-4000);
    expect(high).toBeGreaterThanOrEqual(3000);
    expect(ticks.length).toBeLessThanOrEqual(6);
  });
});

describe('a value on the chart', () => {
  it('is higher the sharper it is', () => {
    const scale = chartScale(at(0), { least: 10 });
    expect([10, 0, -10, 99].map((cents) => heightOf(cents, scale))).toEqual([0, 50, 100, 0]);
  });

  it('stands where its day is, with room at both ends, or in the middle of one day', () => {
    expect([0, 50, 100].map((day) => placeInTime(day, 0, 100))).toEqual([4, 50, 96]);
    expect(placeInTime(7, 7, 7)).toBe(50);
  });
});
