import { describe, expect, it } from 'vitest';
import { panDrift } from '../../../src/domain/rounds/pan-drift';
import { hertz } from '../../../src/domain/tuning/units';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import { resultSample, wholeLead } from './result-sample';

const a4 = hertz(440);
/** As many notes above as below, and one between. */
const sideOf = (k: number): number => (k === 0 ? 0 : k % 2 === 0 ? 1 : -1);
const roundAt = (day: number, pitch: number, uneven = 0, standing: 'settled' | 'sun' = 'settled') =>
  resultSample(
    wholeLead((_, k) => ({ fundamental: pitch + sideOf(k) * uneven, octave: null })),
    { day, conditions: { standing, temperature: 27 } },
  );

describe('the drift of a pan', () => {
  it('is the pan pitch and the unevenness of each round, and what they gain in a year', () => {
    const rounds = [roundAt(365.25, 2, 6), roundAt(0, 8, 2), roundAt(182.625, 5, 4)];
    const { points, pitch, unevenness } = panDrift(rounds, a4);
    const pitches = points.map((point) => Math.round(10 * point.cents) / 10);
    for (const [k, expected] of [8, 5, 2].entries()) {
      expect(Math.abs((pitches[k] ?? 0) - expected)).toBeLessThan(0.01);
    }
    expect(points.map((point) => Math.round(point.unevenness))).toEqual([2, 4, 6]);
    expect(points[0]?.temperature).toBe(27);
    expect(Math.abs((pitch?.centsPerYear ?? 0) + 6)).toBeLessThan(0.2);
    expect(Math.abs((unevenness?.centsPerYear ?? 0) - 4)).toBeLessThan(0.2);
  });

  it('knows no yearly drift after one round, or two at once', () => {
    expect(panDrift([], a4)).toEqual({ points: [], pitch: null, unevenness: null });
    expect(panDrift([roundAt(0, 3)], a4).pitch).toBeNull();
    expect(panDrift([roundAt(0, 3), roundAt(0, 4)], a4).pitch).toBeNull();
  });

  it('shows a round in the sun but does not let it decide the drift', () => {
    const rounds = [roundAt(0, 0), roundAt(100, -30, 0, 'sun'), roundAt(365.25, 0)];
    const drift = panDrift(rounds, a4);
    expect(drift.points.map((point) => point.isProvisional)).toEqual([false, true, false]);
    expect(Math.abs(drift.pitch?.centsPerYear ?? 99)).toBeLessThan(1e-6);
  });

  it('is very unsure over a week, and surer over years', () => {
    const sigmaOver = (days: number) =>
      panDrift([roundAt(0, 0), roundAt(days / 2, -1), roundAt(days, 0)], a4).pitch?.sigmaCents ?? 0;
    expect(sigmaOver(7)).toBeGreaterThan(40);
    expect(sigmaOver(730)).toBeLessThan(1);
  });

  it('holds a planted drift within two standard errors in 9 of 10 pans', () => {
    const gaussian = gaussianFrom(seededRandom(8));
    let held = 0;
    const trials = 50;
    for (let trial = 0; trial < trials; trial++) {
      const rounds = [0, 120, 250, 400, 520].map((day) =>
        resultSample(
          wholeLead(() => ({
            fundamental: (-4 * day) / 365.25 + 2 * gaussian(),
            octave: null,
            strikes: 1,
          })),
          { day },
        ),
      );
      const { pitch } = panDrift(rounds, a4);
      if (pitch && Math.abs(pitch.centsPerYear + 4) < 2 * pitch.sigmaCents) held++;
    }
    expect(held, `${held} of ${trials}`).toBeGreaterThanOrEqual(45);
  });
});
