import { describe, expect, it } from 'vitest';
import { addStrike } from '../../../src/domain/reading/reading';
import { walkOf } from '../../../src/domain/reading/walking';
import * as fc from '../../properties';
import { seeded } from '../../synthetic-sounds/sounds';
import { readingAfter } from './reading-sample';
import { type StrikeSketch, strikeSample } from './strike-sample';

const strikesAt = (values: readonly number[], sketch: StrikeSketch = {}) =>
  values.map((fundamental, k) => strikeSample({ event: k + 1, fundamental, ...sketch }));
const sketchesAt = (...values: number[]) => values.map((fundamental) => ({ fundamental }));

describe('a note whose pitch goes one way from strike to strike', () => {
  it('walks after four strikes, with its cents a strike, and is neither averaged nor settled', () => {
    const reading = readingAfter(...sketchesAt(0, -0.8, -1.7, -2.5));
    expect(reading.walking?.centsPerStrike).toBeCloseTo(-0.84, 6);
    expect(reading.settled).toBe(false);
    expect(reading.fundamental.cents).toBe(-2.5);
    expect(reading.spread).toBeCloseTo(2.5, 9);
    expect(reading.strikes).toHaveLength(4);
  });

  it('walks upwards too, and in steps that do not agree with each other', () => {
    expect(readingAfter(...sketchesAt(0, 3, 6.5, 9.5)).walking?.centsPerStrike).toBeCloseTo(3.2, 6);
  });

  it('walks at the end of a reading that was steady before', () => {
    const reading = readingAfter(...sketchesAt(0, 0.1, -0.1, 0, -0.9, -1.9, -2.8, -3.8));
    expect(reading.walking?.centsPerStrike).toBeLessThan(-0.6);
    expect(reading.settled).toBe(false);
  });

  it('settles where it stopped, not on its way', () => {
    const walked = readingAfter(...sketchesAt(0, -1, -2, -3));
    expect(walked.walking).not.toBeNull();
    const after = [-2.9, -3].reduce(
      (reading, fundamental, k) =>
        addStrike(reading, strikeSample({ event: 5 + k, fundamental })).reading,
      walked,
    );
    expect(after).toMatchObject({ walking: null, settled: true, strikes: { length: 3 } });
    expect(after.fundamental.cents).toBeCloseTo(-2.97, 2);
  });

  it('is not called so for three strikes, for less than a cent, or for one jump', () => {
    expect(walkOf(strikesAt([0, -1, -2]))).toBeNull();
    expect(walkOf(strikesAt([0, -0.3, -0.6, -0.95], { sigma: 0.01 }))).toBeNull();
    expect(walkOf(strikesAt([0, -0.1, -0.2, -3]))).toBeNull();
  });

  it('is not called so within large standard errors, nor on first looks', () => {
    const values = [0, -0.8, -1.7, -2.5];
    expect(walkOf(strikesAt(values))).not.toBeNull();
    expect(walkOf(strikesAt(values, { sigma: 1 }))).toBeNull();
    expect(walkOf(strikesAt(values, { provisional: true }))).toBeNull();
  });

  it('is not called so when one strike goes back', () => {
    expect(walkOf(strikesAt([0, -1, -0.5, -2]))).toBeNull();
  });

  it('is told from chance: in 1,000 seeded steady notes at most 5, of as many walking ones most', () => {
    const random = seeded(31);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const found = (step: number) =>
      Array.from({ length: 1000 }, () =>
        walkOf(strikesAt([0, 1, 2, 3, 4].map((k) => k * step + 0.3 * normal()))),
      ).filter((walk) => walk !== null).length;
    expect(found(0)).toBeLessThanOrEqual(5);
    expect(found(1)).toBeGreaterThan(900);
  });

  it('walks by the same cents wherever it began', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (from) => {
        const walk = walkOf(strikesAt([0, -1, -2, -3].map((value) => value + from)));
        expect(walk?.centsPerStrike).toBeCloseTo(-1, 6);
      }),
    );
  });
});
