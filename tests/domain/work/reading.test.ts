import { describe, expect, it } from 'vitest';
import { addStrike, type Reading } from '../../../src/domain/work/reading';
import { strikeSample } from './strike-sample';

const readingAfter = (...sketches: Parameters<typeof strikeSample>[0][]): Reading => {
  const reading = sketches.reduce<Reading | null>(
    (sum, sketch, k) => addStrike(sum, strikeSample({ event: k + 1, ...sketch })).reading,
    null,
  );
  if (!reading) throw new Error('no strikes');
  return reading;
};

describe('a reading', () => {
  it('settles with three agreeing strikes, not with two', () => {
    expect(readingAfter({ fundamental: -9 }, { fundamental: -9.4 }).settled).toBe(false);
    const three = readingAfter({ fundamental: -9 }, { fundamental: -9.4 }, { fundamental: -8.9 });
    expect(three.settled).toBe(true);
    expect(three.fundamental.cents).toBeCloseTo(-9.1, 5);
    expect(three.spread).toBeCloseTo(0.5, 9);
  });

  it('starts again with a strike that disagrees', () => {
    const two = readingAfter({ fundamental: -9 }, { fundamental: -9.2 });
    const step = addStrike(two, strikeSample({ event: 3, fundamental: -2 }));
    expect(step.kind).toBe('again');
    expect(step.reading.strikes).toHaveLength(1);
  });

  it('disagrees over the octave too', () => {
    const step = addStrike(readingAfter({ octave: 0 }), strikeSample({ event: 2, octave: 7 }));
    expect(step.kind).toBe('again');
  });

  it('starts anew with another note', () => {
    const step = addStrike(readingAfter({}, {}), strikeSample({ event: 3, note: 75 }));
    expect(step.kind).toBe('taken');
    expect(step.reading.note).toBe(75);
    expect(step.reading.strikes).toHaveLength(1);
  });

  it('replaces the first look by the settled result of the same strike', () => {
    const reading = readingAfter(
      { event: 1, provisional: true, fundamental: -8 },
      { event: 1, fundamental: -9 },
    );
    expect(reading.strikes).toHaveLength(1);
    expect(reading.fundamental.cents).toBeCloseTo(-9, 9);
  });

  it('does not settle on first looks', () => {
    expect(readingAfter({}, {}, { provisional: true }).settled).toBe(false);
  });

  it('trusts a sure strike more than an unsure one', () => {
    const reading = readingAfter({ fundamental: 0, sigma: 0.05 }, { fundamental: 2, sigma: 1.5 });
    expect(reading.fundamental.cents).toBeLessThan(0.2);
  });
});
