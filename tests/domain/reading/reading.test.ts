import { describe, expect, it } from 'vitest';
import { addStrike } from '../../../src/domain/reading/reading';
import { readingAfter } from './reading-sample';
import { strikeSample } from './strike-sample';

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

  it('trusts a loud strike and a soft one less than a good one', () => {
    for (const loudness of ['soft', 'loud'] as const) {
      const reading = readingAfter({ fundamental: 0 }, { fundamental: 1, loudness });
      expect(reading.fundamental.cents, loudness).toBeGreaterThan(0.05);
      expect(reading.fundamental.cents, loudness).toBeLessThan(0.45);
    }
  });

  it('does not settle before its standard errors are below 0.7 cent', () => {
    const unsure = { sigma: 1.3 };
    const three = readingAfter(unsure, unsure, unsure);
    expect(three.fundamental.sigmaCents).toBeGreaterThan(0.7);
    expect(three.settled).toBe(false);
    const more = readingAfter(...Array.from({ length: 8 }, () => unsure));
    expect(more.octave?.sigmaCents).toBeLessThan(0.7);
    expect(more.settled).toBe(true);
  });

  it('does not settle on an octave that scatters, though the fundamental does not', () => {
    const reading = readingAfter({ octave: -2.4 }, { octave: 0 }, { octave: 2.4 });
    expect(reading.fundamental.sigmaCents).toBeLessThan(0.3);
    expect(reading.octave?.sigmaCents).toBeGreaterThan(0.7);
    expect(reading.settled).toBe(false);
  });

  it('is surer with every strike, and less sure of strikes that scatter', () => {
    const of = (...values: number[]) =>
      readingAfter(...values.map((fundamental) => ({ fundamental }))).fundamental.sigmaCents;
    expect(of(0, 0, 0)).toBeLessThan(of(0, 0));
    expect(of(0, 1.2, -1)).toBeGreaterThan(2 * of(0, 0.1, -0.1));
  });

  it('says when the fundamental is only inferred', () => {
    expect(readingAfter({}).isInferred).toBe(false);
    expect(readingAfter({}, { isInferred: true }).isInferred).toBe(true);
  });

  it('of an inferred fundamental settles with three strikes that agree, and is no surer for them', () => {
    const inferred = { isInferred: true };
    expect(readingAfter(inferred, inferred).settled).toBe(false);
    const three = readingAfter(inferred, inferred, inferred);
    expect(three.settled).toBe(true);
    expect(three.fundamental.sigmaCents).toBeGreaterThanOrEqual(10);
    expect(three.octave?.sigmaCents).toBeGreaterThanOrEqual(10);
    // A strike whose fundamental is heard settles what the others could only infer.
    expect(readingAfter(inferred, inferred, {}).fundamental.sigmaCents).toBeLessThan(1);
  });

  it('of inferred fundamentals takes none for agreeing that differs by more than its partials may', () => {
    const reading = readingAfter(
      { isInferred: true },
      { isInferred: true },
      { isInferred: true, fundamental: 8 },
    );
    expect(reading.settled).toBe(false);
    expect(reading.strikes).toHaveLength(1);
  });
});

describe('a strike that disagrees with three others', () => {
  it('is left out and named, and the reading stays settled', () => {
    const reading = readingAfter({}, {}, {}, { fundamental: 8 });
    expect(reading.settled).toBe(true);
    expect(reading.fundamental.cents).toBeCloseTo(0, 9);
    expect(reading.leftOut).toMatchObject([{ why: 'fundamental', strike: { event: 4 } }]);
  });

  it('is left out wherever it came, and may be off in its octave only', () => {
    const first = readingAfter({ octave: 9 }, {}, {}, {});
    expect(first.leftOut).toMatchObject([{ why: 'octave', strike: { event: 1 } }]);
    expect(first.octave?.centsFromOwn).toBeCloseTo(0, 9);
    expect(first.settled).toBe(true);
    const third = readingAfter({}, {}, { fundamental: -7 }, {});
    expect(third.leftOut).toMatchObject([{ why: 'fundamental', strike: { event: 3 } }]);
    expect(third.settled).toBe(true);
  });

  it('is the new state of the note if the next one confirms it', () => {
    const changed = readingAfter({}, {}, {}, { fundamental: 8 }, { fundamental: 8.2 });
    expect(changed.fundamental.cents).toBeCloseTo(8.1, 9);
    expect(changed).toMatchObject({ settled: false, strikes: { length: 2 }, leftOut: [] });
    const settled = addStrike(changed, strikeSample({ event: 6, fundamental: 8.1 })).reading;
    expect(settled).toMatchObject({ settled: true, leftOut: [] });
  });

  it('does not count as long as it is only a first look', () => {
    const three = readingAfter({}, {}, {});
    const look = strikeSample({ event: 4, fundamental: 8, provisional: true });
    expect(addStrike(three, look).kind).toBe('again');
  });
});
