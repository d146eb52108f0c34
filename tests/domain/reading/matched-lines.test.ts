import { describe, expect, it } from 'vitest';
import type { Strike } from '../../../src/domain/measurement/strike';
import { addStrike, type Reading } from '../../../src/domain/reading/reading';
import { cents, hertz } from '../../../src/domain/tuning/units';
import { strikeSample } from './strike-sample';

/** A strike with its stronger line at `fundamental` cents and another one at `second`. */
function twoLines(event: number, fundamental: number, second: number): Strike {
  // The octave lies at the same place in every strike, whichever line is the stronger.
  const strike = strikeSample({ event, fundamental, octave: -fundamental });
  const line = { ...strike.fundamental, cents: cents(second) };
  return { ...strike, fundamentalRival: { ...line, beatHz: hertz(5) } };
}

function readingOf(strikes: readonly Strike[]): Reading {
  const [first, ...others] = strikes;
  if (!first) throw new Error('no strike');
  return others.reduce(
    (reading, strike) => addStrike(reading, strike).reading,
    addStrike(null, first).reading,
  );
}

describe('three strikes with two lines at the fundamental, of which now one and now the other is the stronger', () => {
  const reading = readingOf([twoLines(1, 0, 14), twoLines(2, 14.2, 0.2), twoLines(3, 0.1, 14.1)]);

  it('agree on the line that was the stronger more often', () => {
    expect(reading.strikes).toHaveLength(3);
    expect(reading.fundamental.cents).toBeCloseTo(0.1, 1);
    expect(reading.settled).toBe(true);
  });

  it('tell of the other one', () => {
    expect(reading.fundamentalRival?.cents).toBeCloseTo(14.1, 1);
    expect(reading.fundamentalRival?.beatHz).toBe(5);
  });

  it('set the octave against the line that was taken', () => {
    const own = reading.strikes.map(({ octave }) => octave?.centsFromOwn ?? Number.NaN);
    expect(own[1]).toBeCloseTo(-0.2, 6);
  });
});

it('a strike with one line decides which line the others are compared by', () => {
  const single = strikeSample({ event: 3, fundamental: 14, octave: -14 });
  const reading = readingOf([twoLines(1, 0, 14), twoLines(2, 14.2, 0.2), single]);
  expect(reading.fundamental.cents).toBeCloseTo(14.05, 1);
});

it('strikes without a second line stay as they are', () => {
  const strikes = [strikeSample({ event: 1 }), strikeSample({ event: 2, fundamental: 1 })];
  expect(readingOf(strikes).strikes).toEqual(strikes);
});
