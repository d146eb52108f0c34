import { describe, expect, it } from 'vitest';
import {
  amplitudeOfDb,
  dbOfAmplitude,
  dbOfPower,
  powerOfDb,
} from '../../../src/domain/numbers/decibel-levels';
import * as fc from '../../properties';

describe('decibels', () => {
  it('are 10 for ten times the power and 20 for ten times the amplitude', () => {
    expect(dbOfPower(10, 0)).toBe(10);
    expect(dbOfAmplitude(10, 0)).toBe(20);
  });

  it('come back from a power and from an amplitude', () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: 200, noNaN: true }), (db) => {
        expect(dbOfPower(powerOfDb(db), 0)).toBeCloseTo(db, 9);
        expect(dbOfAmplitude(amplitudeOfDb(db), 0)).toBeCloseTo(db, 9);
      }),
    );
  });

  it('of silence are those of the least that counts', () => {
    expect(dbOfPower(0, 1e-20)).toBeCloseTo(-200, 9);
    expect(dbOfAmplitude(0, 1e-9)).toBeCloseTo(-180, 9);
  });
});
