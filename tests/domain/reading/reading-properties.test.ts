// What must hold for any strikes, not only for chosen ones.

import { describe, expect, it } from 'vitest';
import type { Loudness } from '../../../src/domain/measurement/strike';
import type { Reading } from '../../../src/domain/reading/reading';
import * as fc from '../../properties';
import { readingAfter } from './reading-sample';
import type { StrikeSketch } from './strike-sample';

const cents = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const loudness = fc.constantFrom<Loudness>('soft', 'good', 'loud');

/** Strikes that agree, within 0.9 cent of each other: nothing that could be a walk. */
const agreeing = fc.array(
  fc.record<StrikeSketch>({
    fundamental: cents(-0.45, 0.45),
    octave: cents(-0.4, 0.4),
    sigma: cents(0.02, 0.5),
    loudness,
  }),
  { minLength: 3, maxLength: 8 },
);

const moved = (strike: StrikeSketch, by: number): StrikeSketch => ({
  ...strike,
  fundamental: (strike.fundamental ?? 0) + by,
});

const valuesOf = ({ fundamental, octave, settled, leftOut }: Reading) => ({
  fundamental: fundamental.cents,
  sigma: fundamental.sigmaCents,
  octave: octave?.centsFromOwn ?? Number.NaN,
  settled: Number(settled),
  leftOut: leftOut.length,
});

function expectClose(one: Reading, other: Reading, shift = 0): void {
  const [low, high] = [valuesOf(one), valuesOf(other)];
  expect(high.fundamental - low.fundamental).toBeCloseTo(shift, 6);
  expect(high.sigma).toBeCloseTo(low.sigma, 6);
  expect(high.octave).toBeCloseTo(low.octave, 6);
  expect(high.settled).toBe(low.settled);
  expect(high.leftOut).toBe(low.leftOut);
}

describe('a reading of agreeing strikes', () => {
  const inAnyOrder = agreeing.chain((strikes) =>
    fc.tuple(
      fc.constant(strikes),
      fc.shuffledSubarray(strikes, { minLength: strikes.length, maxLength: strikes.length }),
    ),
  );

  it('does not depend on their order', () => {
    fc.assert(
      fc.property(inAnyOrder, ([strikes, shuffled]) => {
        const reading = readingAfter(...strikes);
        expect(reading.strikes).toHaveLength(strikes.length);
        expectClose(reading, readingAfter(...shuffled));
      }),
    );
  });

  it('moves with them by the same distance', () => {
    fc.assert(
      fc.property(agreeing, cents(-80, 80), (strikes, by) => {
        const all = strikes.map((strike) => moved(strike, by));
        expectClose(readingAfter(...strikes), readingAfter(...all), by);
      }),
    );
  });

  it('lies between the lowest and the highest of them', () => {
    fc.assert(
      fc.property(agreeing, (strikes) => {
        const values = strikes.map(({ fundamental = 0 }) => fundamental);
        const { cents: value } = readingAfter(...strikes).fundamental;
        expect(value).toBeGreaterThanOrEqual(Math.min(...values) - 1e-9);
        expect(value).toBeLessThanOrEqual(Math.max(...values) + 1e-9);
      }),
    );
  });

  it('is moved by a strike far away by less than they lie apart, and names it', () => {
    const off = fc.oneof(cents(4, 60), cents(-60, -4));
    fc.assert(
      fc.property(agreeing, off, fc.nat(), loudness, (strikes, by, at, how) => {
        const bad = { fundamental: by, sigma: 0.1, loudness: how };
        const place = at % (strikes.length + 1);
        const reading = readingAfter(...strikes.toSpliced(place, 0, bad));
        const good = readingAfter(...strikes);
        const distance = Math.abs(reading.fundamental.cents - good.fundamental.cents);
        expect(distance).toBeLessThanOrEqual(good.spread + 1e-9);
        expect(reading.leftOut.map(({ strike }) => strike.fundamental.cents)).toEqual([by]);
      }),
    );
  });

  it('is hardly moved by one of them that lies apart, if there are five', () => {
    fc.assert(
      fc.property(cents(-2.4, 2.4), (by) => {
        const reading = readingAfter({}, {}, {}, {}, {}, { fundamental: by });
        // The plain mean would be 0.4 cents off.
        expect(Math.abs(reading.fundamental.cents)).toBeLessThan(0.15);
      }),
    );
  });
});
