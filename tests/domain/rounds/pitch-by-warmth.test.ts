// Weather told apart from drift. The pans are made up: what they do with the air is known, and so what must be found.
import { describe, expect, it } from 'vitest';
import { type DriftPoint, pitchTrend } from '../../../src/domain/rounds/pan-drift';
import {
  farFromUsualBy,
  isWarmthKnown,
  pitchByWarmth,
  usualTemperature,
  withoutWeather,
} from '../../../src/domain/rounds/pitch-by-warmth';
import { cents, instant } from '../../../src/domain/tuning/units';
import { warmthWords, withoutWeatherWords } from '../../../src/ui/words/history-words';

const year = 365.25 * 24 * 3600 * 1000;

/** A round every two months, in summer and winter air by turns. */
const pan = (
  temperatures: readonly (number | null)[],
  { perDegree = 0, perYear = 0, provisional = [] as readonly number[] } = {},
): readonly DriftPoint[] =>
  temperatures.map((temperature, k) => ({
    at: instant((k * year) / 6),
    cents: cents(perDegree * ((temperature ?? 20) - 20) + (perYear * k) / 6),
    sigmaCents: cents(0.3),
    unevenness: cents(3),
    temperature,
    isProvisional: provisional.includes(k),
  }));

const turns = [20, 28, 19, 30, 12, 24, 27, 15, 21, 26];

describe('the pitch of a pan against the air', () => {
  it('is found where the pan falls a cent for each degree, and the drift without it is none', () => {
    const points = pan(turns, { perDegree: -1 });
    const found = pitchByWarmth(points);
    if (!found) throw new Error('not found');
    expect(found.slope).toBeCloseTo(-1, 6);
    expect(isWarmthKnown(found)).toBe(true);
    const calm = pitchTrend(withoutWeather(points, found));
    expect(Math.abs(calm?.centsPerYear ?? 99)).toBeLessThan(0.01);
    expect(warmthWords(found)).toMatch(
      /about −1 cent per °C on this pan, give or take 0\.\d \(10 rounds\)/,
    );
    expect(withoutWeatherWords(found, calm)).toContain('Without the weather (all at 22.5 °C)');
  });

  it('leaves the drift of the years in: 6 cents a year are still there without the weather', () => {
    const points = pan(turns, { perDegree: -1, perYear: 6 });
    const found = pitchByWarmth(points);
    if (!found) throw new Error('not found');
    expect(Math.abs(found.slope + 1)).toBeLessThan(0.25);
    const calm = pitchTrend(withoutWeather(points, found));
    expect(Math.abs((calm?.centsPerYear ?? 0) - 6)).toBeLessThan(1.5);
  });

  it('is not claimed for a pan that the air does not move', () => {
    const noisy = pan(turns).map((point, k) => ({
      ...point,
      cents: cents([0.4, -0.6, 0.5, 0.7, -0.3, 0.1, -0.8, 0.2, -0.1, 0.3][k] ?? 0),
    }));
    const found = pitchByWarmth(noisy);
    expect(found && isWarmthKnown(found)).toBe(false);
    expect(warmthWords(found)).toMatch(/^Too early to say/);
    expect(withoutWeatherWords(found, null)).toBe('');
  });

  it('asks for three settled rounds with a temperature, three degrees apart', () => {
    expect(pitchByWarmth(pan([20, null, 28]))).toBeNull();
    expect(pitchByWarmth(pan([20, 21, 22]))).toBeNull();
    expect(pitchByWarmth(pan([20, 24, 28], { provisional: [2] }))).toBeNull();
    expect(pitchByWarmth(pan([20, 24, 28], { perDegree: -1 }))?.slope).toBeCloseTo(-1, 9);
  });

  it('says which rounds lie far from the usual air', () => {
    const usual = usualTemperature(pan([20, 22, null, 21, 30]));
    expect(usual).toBe(21.5);
    expect(farFromUsualBy(30, usual)).toBe(8.5);
    expect(farFromUsualBy(20, usual)).toBeNull();
    expect(farFromUsualBy(null, usual)).toBeNull();
  });
});
