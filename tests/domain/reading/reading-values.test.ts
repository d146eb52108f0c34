import { describe, expect, it } from 'vitest';
import type { Strike } from '../../../src/domain/measurement/strike';
import { addStrike, type Reading } from '../../../src/domain/reading/reading';
import { readingValues } from '../../../src/domain/reading/reading-values';
import { panId, type ReadingRecord, recordId } from '../../../src/domain/records/rack-records';
import type { StrikeRecord } from '../../../src/domain/records/strike-record';
import { strikeOf, strikeRecordOf } from '../../../src/domain/records/strike-record';
import { frequencyOf } from '../../../src/domain/tuning/equal-temperament';
import {
  cents,
  decibels,
  hertz,
  instant,
  midiNote,
  seconds,
  shiftedBy,
} from '../../../src/domain/tuning/units';
import * as fc from '../../properties';
import { anyStrikeRecord } from '../records/record-arbitraries';

const a4 = hertz(440);
const d5 = midiNote(74);
const aim = { note: d5, a4, offset: cents(0) };

const line = (hz: number) => ({
  hz: hertz(hz),
  sigmaCents: cents(0.1),
  decaySeconds: seconds(0.3),
  levelDb: decibels(-20),
});

function record(hz: number, parts: Partial<StrikeRecord> = {}): StrikeRecord {
  return {
    fundamental: line(hz),
    isInferred: false,
    octave: line(2 * hz),
    octaveRival: null,
    third: { ...line(3 * hz), kind: 'twelfth' },
    glideCents: cents(3),
    peakDb: decibels(-10),
    loudness: 'good',
    alsoRinging: [],
    ...parts,
  };
}

const reading = (...strikes: StrikeRecord[]): ReadingRecord => ({
  shape: 1,
  id: recordId('a'),
  pan: panId('p'),
  at: instant(1),
  kind: 'reading',
  round: null,
  note: d5,
  strikes,
  taking: {
    source: 'practice',
    sampleRate: 48_000,
    processing: [],
    gaps: 0,
    appVersion: '',
  },
  sound: null,
});

describe('a kept strike', () => {
  it('is kept unchanged when it is read and kept again', () => {
    fc.assert(
      fc.property(anyStrikeRecord, fc.integer({ min: 30, max: 100 }), (kept, note) => {
        const strike = strikeOf(kept, { note: midiNote(note), a4, offset: cents(3) }, 1);
        expect(strikeRecordOf(strike)).toEqual(kept);
      }),
    );
  });

  it('has each partial against its place over the target and over its own fundamental', () => {
    // 1 cent is a ratio of 2^(1/1200) (Ellis; ISO 80000-8 has the octave). 587.3295 Hz: D5 over A4 = 440 Hz.
    const hz = 587.3295 * 2 ** (6 / 1200);
    const strike = strikeOf(
      record(hz, {
        octave: line(2 * hz * 2 ** (-4 / 1200)),
        third: { ...line(4 * hz * 2 ** (9 / 1200)), kind: 'double-octave' },
        octaveRival: { ...line(2 * hz * 2 ** (11 / 1200)), note: midiNote(86) },
      }),
      aim,
      2,
    );
    expect(strike.fundamental.cents).toBeCloseTo(6, 3);
    expect(strike.octave?.cents).toBeCloseTo(2, 3);
    expect(strike.octave?.centsFromOwn).toBeCloseTo(-4, 6);
    expect(strike.third?.cents).toBeCloseTo(15, 3);
    expect(strike.third?.centsFromOwn).toBeCloseTo(9, 6);
    expect(strike.octaveRival?.centsFromOwn).toBeCloseTo(11, 6);
    // The octave lies at 1174.659 Hz (D6) and 2 cents: 1176.017 Hz.
    expect(strike.octaveRival?.beatHz).toBeCloseTo(1176.017 * (2 ** (15 / 1200) - 1), 2);
    expect(strike).toMatchObject({ kind: 'strike', event: 2, provisional: false, note: d5 });
  });

  it('is judged against the A4 and the offset that are asked, without another Hz', () => {
    const kept = record(frequencyOf(d5, hertz(442)));
    const at = (pitch: number, offset: number) =>
      strikeOf(kept, { note: d5, a4: hertz(pitch), offset: cents(offset) }, 1).fundamental.cents;
    expect(at(442, 0)).toBeCloseTo(0, 9);
    // 442 Hz over 440 Hz: 7.85 cents.
    expect(at(440, 0)).toBeCloseTo(7.851, 3);
    expect(at(440, 5)).toBeCloseTo(2.851, 3);
  });
});

describe('the values of a kept reading', () => {
  const strikes = [0.2, -0.1, 0.4].map((off) => record(shiftedBy(frequencyOf(d5), 7 + off)));

  it('are those of the reading that was settled on the bench', () => {
    const heard = strikes.map((each, k): Strike => strikeOf(each, aim, k + 1));
    const settled = heard.reduce<Reading | null>(
      (sum, strike) => addStrike(sum, strike).reading,
      null,
    );
    expect(settled?.settled).toBe(true);
    expect(settled).toMatchObject(readingValues(reading(...strikes), aim));
  });

  it('move with the A4 and the offset by their distance', () => {
    const kept = reading(...strikes);
    const base = readingValues(kept, aim);
    expect(base.fundamental.cents).toBeCloseTo(7.17, 1);
    const moved = readingValues(kept, { a4: hertz(442), offset: cents(-2) });
    expect(moved.fundamental.cents - base.fundamental.cents).toBeCloseTo(-7.851 + 2, 3);
    expect(moved.octave?.centsFromOwn).toBeCloseTo(base.octave?.centsFromOwn ?? Number.NaN, 9);
  });

  it('leave two lines at the octave open unless a strike with the partner damped says which it is', () => {
    const hz = frequencyOf(d5);
    const both = record(hz, {
      octave: line(2 * hz * 2 ** (1 / 1200)),
      octaveRival: { ...line(2 * hz * 2 ** (9 / 1200)), note: midiNote(86) },
    });
    expect(readingValues(reading(both, both), aim).octaveRival?.centsFromOwn).toBeCloseTo(9, 6);
    const damped = record(hz, { octave: line(2 * hz * 2 ** (8.8 / 1200)) });
    const told = readingValues(reading(both, both, damped), aim);
    expect(told.octaveRival).toBeNull();
    expect(told.octave?.centsFromOwn).toBeCloseTo(8.93, 1);
  });
});
