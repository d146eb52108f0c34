import { describe, expect, it } from 'vitest';
import { ownOctaves, withOctaveNear } from '../../../src/domain/reading/own-octave';
import { verdictOn } from '../../../src/domain/tuning/verdict';
import { readingAfter } from './reading-sample';
import { strikeSample } from './strike-sample';

const octavesOf = (strikes: readonly { octave: { centsFromOwn: number } | null }[]) =>
  strikes.map(({ octave }) => octave?.centsFromOwn ?? null);

describe('two lines at the octave', () => {
  it('stay two values, never their mean, whichever the ear thought likelier', () => {
    const reading = readingAfter(
      { octave: 12, rival: 0 },
      { octave: 0, rival: 12 },
      { octave: 12, rival: 0 },
    );
    expect(reading.octave?.centsFromOwn).toBeCloseTo(12, 9);
    expect(reading.octaveRival?.centsFromOwn).toBeCloseTo(0, 9);
    expect(reading.octaveRival?.note).toBe(86);
    expect(reading.leftOut).toEqual([]);
  });

  it('leave the octave without a verdict; the fundamental is judged and settles', () => {
    const two = { octave: 12, rival: 0 };
    const open = readingAfter(two, two, two);
    expect(open.settled).toBe(true);
    expect(verdictOn(open)).toEqual({ kind: 'octave-open' });
    const off = readingAfter({ ...two, fundamental: -9 });
    expect(verdictOn(off)).toMatchObject({ kind: 'flat' });
  });

  it('are told apart by a strike with the partner damped: the line nearest to its one is the own', () => {
    const reading = readingAfter({ octave: 12, rival: 0.4 }, { octave: 0 });
    expect(reading.octaveRival).toBeNull();
    expect(reading.octave?.centsFromOwn).toBeCloseTo(0.2, 9);
    expect(octavesOf(reading.strikes)).toEqual([0.4, 0]);
    expect(verdictOn(reading)).toEqual({ kind: 'aligned' });
    const other = readingAfter({ octave: 12, rival: 0.4 }, { octave: 11.5 });
    expect(other.octave?.centsFromOwn).toBeCloseTo(11.75, 9);
    expect(verdictOn(other)).toMatchObject({ kind: 'octave-sharp' });
  });

  it('stay told apart when the finger is taken off again', () => {
    const reading = readingAfter({ octave: 12, rival: 0 }, { octave: 0 }, { octave: 12, rival: 0 });
    expect(reading).toMatchObject({ octaveRival: null, settled: true });
    expect(octavesOf(reading.strikes)).toEqual([0, 0, 0]);
  });

  it('are not told apart by a first look, which is too short to see two', () => {
    const reading = readingAfter({ octave: 12, rival: 0 }, { octave: 6, provisional: true });
    expect(reading.strikes).toHaveLength(2);
    expect(reading.octave?.centsFromOwn).toBeCloseTo(12, 9);
    expect(reading.octaveRival?.centsFromOwn).toBeCloseTo(0, 9);
  });

  it('are not told apart by a strike without any line there', () => {
    const reading = readingAfter({ octave: 12, rival: 0 }, { octave: null });
    expect(reading.octaveRival?.centsFromOwn).toBeCloseTo(0, 9);
  });

  it('are no reason to average when the one line lies between them: again', () => {
    const reading = readingAfter({ octave: 12, rival: 0 }, { octave: 6 });
    expect(reading.strikes).toHaveLength(1);
    expect(reading.octave?.centsFromOwn).toBe(6);
  });

  it('may have a partner that the pan does not name', () => {
    expect(readingAfter({ octave: 12, rival: 0, rivalNote: null }).octaveRival?.note).toBeNull();
  });
});

describe('an exchange of the two lines', () => {
  it('keeps partner and beating, and can be taken back', () => {
    const strike = strikeSample({ octave: 12, rival: 0 });
    const other = withOctaveNear(strike, 1);
    expect(other.octave?.centsFromOwn).toBe(0);
    expect(other.octave).not.toHaveProperty('beatHz');
    expect(other.octaveRival).toMatchObject({ centsFromOwn: 12, note: 86 });
    expect(withOctaveNear(other, 11)).toEqual(strike);
    expect(withOctaveNear(strike, 11)).toBe(strike);
  });

  it('is not made where there is one line only', () => {
    const strikes = [strikeSample({ octave: 3 }), strikeSample({ event: 2, octave: null })];
    expect(ownOctaves(strikes)).toEqual({ strikes, isOpen: false });
  });
});
