import { describe, expect, it } from 'vitest';
import type { RingingLine, Strike } from '../../../src/domain/measurement/strike';
import {
  type OctaveDirection,
  readingAtOctave,
  strikeAtOctave,
} from '../../../src/domain/reading/correct-octave';
import { addStrike, type Reading } from '../../../src/domain/reading/reading';
import { cents, decibels, hertz, midiNote, shiftedBy } from '../../../src/domain/tuning/units';
import { strikeSample } from './strike-sample';

/** D5 at A4 = 440 Hz in equal temperament: 440 · 2^(5/12). */
const d5 = 440 * 2 ** (5 / 12);
const line = (hz: number): RingingLine => ({
  hz: hertz(hz),
  levelDb: decibels(-25),
  note: null,
  partial: null,
});

interface Sketch {
  readonly event?: number;
  readonly thirdKind?: 'twelfth' | 'double-octave';
  readonly octave?: number | null;
  readonly alsoRinging?: readonly RingingLine[];
}

/** A strike of D5: fundamental −9, octave and third +5 and +8 against it, with true frequencies. */
function strikeOfD5({
  event = 1,
  thirdKind = 'double-octave',
  octave = 5,
  ...rest
}: Sketch): Strike {
  const strike = strikeSample({ event, fundamental: -9, octave, third: 8 });
  const hzOf = (order: number, off: number) => shiftedBy(order * d5, off);
  return {
    ...strike,
    fundamental: { ...strike.fundamental, hz: hzOf(1, -9) },
    octave: strike.octave && { ...strike.octave, hz: hzOf(2, strike.octave.cents) },
    third: strike.third && {
      ...strike.third,
      kind: thirdKind,
      hz: hzOf(thirdKind === 'twelfth' ? 3 : 4, -1),
    },
    alsoRinging: rest.alsoRinging ?? [],
  };
}

const readingOf = (...strikes: Strike[]): Reading => {
  const reading = strikes.reduce<Reading | null>((sum, one) => addStrike(sum, one).reading, null);
  if (!reading) throw new Error('no strikes');
  return reading;
};
const read = (strike: Strike, direction: OctaveDirection): Strike => {
  const found = strikeAtOctave(strike, direction);
  if (!found) throw new Error('not read');
  return found;
};

describe('a strike read an octave higher', () => {
  it('has its octave as fundamental, at the same cents, and its double octave as octave', () => {
    const high = read(strikeOfD5({}), 1);
    expect(high.note).toBe(86);
    expect(high.fundamental.cents).toBeCloseTo(-4, 9);
    expect(high.fundamental.hz).toBeCloseTo(2 * d5 * 2 ** (-4 / 1200), 6);
    expect(high.fundamental).not.toHaveProperty('centsFromOwn');
    expect(high.octave?.cents).toBeCloseTo(-1, 9);
    expect(high.octave?.centsFromOwn).toBeCloseTo(3, 9);
    expect(1200 * Math.log2((high.octave?.hz ?? 0) / (2 * high.fundamental.hz))).toBeCloseTo(3, 6);
    expect(high.third).toBeNull();
  });

  it('has no octave if only the twelfth was measured', () => {
    expect(read(strikeOfD5({ thirdKind: 'twelfth' }), 1).octave).toBeNull();
  });

  it('keeps the old fundamental as a line that rings along, so that it can be taken back', () => {
    const back = read(read(strikeOfD5({}), 1), -1);
    expect(back.note).toBe(74);
    expect(back.fundamental.cents).toBeCloseTo(-9, 6);
    expect(back.octave?.centsFromOwn).toBeCloseTo(5, 6);
    expect(back.third).toMatchObject({ kind: 'double-octave' });
    expect(back.third?.centsFromOwn).toBeCloseTo(8, 6);
  });

  it('needs a measured octave', () => {
    expect(strikeAtOctave(strikeOfD5({ octave: null }), 1)).toBeNull();
  });
});

describe('a strike read an octave lower', () => {
  const d4 = shiftedBy(d5 / 2, 6);

  it('has the line at half the frequency as fundamental, and its old fundamental as octave', () => {
    const low = read(strikeOfD5({ alsoRinging: [line(900), line(d4)] }), -1);
    expect(low.note).toBe(62);
    expect(low.fundamental.hz).toBe(d4);
    expect(low.fundamental.cents).toBeCloseTo(6, 6);
    expect(low.octave?.cents).toBeCloseTo(-9, 9);
    expect(low.octave?.centsFromOwn).toBeCloseTo(-15, 6);
    expect(low.third).toMatchObject({ kind: 'double-octave' });
    expect(low.third?.centsFromOwn).toBeCloseTo(-10, 6);
    expect(low.alsoRinging).toEqual([line(900)]);
  });

  it('is only a first look, because that line was not fitted', () => {
    const low = read(strikeOfD5({ alsoRinging: [line(d4)] }), -1);
    expect(low.provisional).toBe(true);
    expect(low.fundamental.sigmaCents).toBeGreaterThanOrEqual(2);
  });

  it('needs a line there', () => {
    expect(
      strikeAtOctave(strikeOfD5({ alsoRinging: [line(shiftedBy(d5 / 2, 90))] }), -1),
    ).toBeNull();
  });
});

describe('a reading', () => {
  it('of three agreeing strikes stays settled an octave higher', () => {
    const three = readingOf(...[1, 2, 3].map((event) => strikeOfD5({ event })));
    const high = readingAtOctave(three, 1);
    expect(high).toMatchObject({ note: midiNote(86), settled: true, strikes: { length: 3 } });
    expect(high?.fundamental.cents).toBeCloseTo(cents(-4), 6);
  });

  it('leaves out strikes that cannot be read, and is none if there are no others', () => {
    const mixed = readingOf(strikeOfD5({ octave: null }), strikeOfD5({ event: 2 }));
    expect(readingAtOctave(mixed, 1)?.strikes).toHaveLength(1);
    expect(readingAtOctave(readingOf(strikeOfD5({})), -1)).toBeNull();
  });

  it('an octave lower rests on the newest strike and is not settled', () => {
    const alsoRinging = [line(d5 / 2)];
    const three = readingOf(...[1, 2, 3].map((event) => strikeOfD5({ event, alsoRinging })));
    expect(readingAtOctave(three, -1)).toMatchObject({
      note: 62,
      settled: false,
      strikes: { length: 1 },
    });
  });
});

describe('two lines at the octave', () => {
  it('do not go with the note into another octave: the other one rings along there', () => {
    const strike = strikeSample({ octave: 12, rival: 0 });
    const high = read(strike, 1);
    expect(high.octaveRival).toBeNull();
    expect(high.alsoRinging.map(({ note, partial }) => ({ note, partial }))).toContainEqual({
      note: 86,
      partial: 1,
    });
  });
});

describe('a fundamental that was only inferred', () => {
  it('is no line that rings along an octave higher, where the fundamental was heard', () => {
    const high = read({ ...strikeOfD5({}), isInferred: true }, 1);
    expect(high.isInferred).toBe(false);
    expect(high.alsoRinging).toEqual([]);
  });
});
