import { describe, expect, it } from 'vitest';
import { cents, midiNote } from '../../../src/domain/tuning/units';
import { verdictOn } from '../../../src/domain/tuning/verdict';

const judged = (fundamental: number, octave: number | null, third: number | null, note = 74) => ({
  note: midiNote(note),
  fundamental: { cents: cents(fundamental) },
  octave: octave === null ? null : { centsFromOwn: cents(octave) },
  third: third === null ? null : { kind: 'twelfth' as const, centsFromOwn: cents(third) },
});

describe('the verdict on an inferred fundamental', () => {
  const inferred = (fundamental: number, octave = 0, third = 0) => ({
    note: midiNote(30),
    isInferred: true,
    fundamental: { cents: cents(fundamental), sigmaCents: cents(10) },
    octave: { centsFromOwn: cents(octave), sigmaCents: cents(10) },
    third: { kind: 'twelfth' as const, centsFromOwn: cents(third), sigmaCents: cents(10) },
  });

  it('says nothing finer than two standard errors, and never that all is aligned', () => {
    expect(verdictOn(inferred(0))).toEqual({ kind: 'inferred' });
    expect(verdictOn(inferred(-20))).toEqual({ kind: 'inferred' });
    expect(verdictOn(inferred(9, -12, 15))).toEqual({ kind: 'inferred' });
  });

  it('names what is farther off', () => {
    expect(verdictOn(inferred(-21))).toEqual({ kind: 'flat', cents: -21 });
    expect(verdictOn(inferred(0, 24)).kind).toBe('octave-sharp');
    expect(verdictOn(inferred(0, 0, -26)).kind).toBe('third-flat');
  });
});

describe('the verdict', () => {
  it('names the fundamental before the octave, however far the octave is off', () => {
    expect(verdictOn(judged(-9, 40, 0))).toEqual({ kind: 'flat', cents: -9 });
    expect(verdictOn(judged(6, 0, 0)).kind).toBe('sharp');
  });

  it('names the octave when the fundamental is true', () => {
    expect(verdictOn(judged(3, -6, 30)).kind).toBe('octave-flat');
    expect(verdictOn(judged(3, 6, 30)).kind).toBe('octave-sharp');
  });

  it('does not judge the octave while two lines are there, however near to true the likelier is', () => {
    const octaveRival = { centsFromOwn: cents(12) };
    expect(verdictOn({ ...judged(3, 0, 0), octaveRival })).toEqual({ kind: 'octave-open' });
    expect(verdictOn({ ...judged(3, 12, 30), octaveRival })).toEqual({ kind: 'octave-open' });
    expect(verdictOn({ ...judged(-9, 0, 0), octaveRival }).kind).toBe('flat');
    // Above C6 the octave is information only.
    expect(verdictOn({ ...judged(3, 0, 0, 86), octaveRival }).kind).toBe('in-tune');
    expect(verdictOn({ ...judged(3, 0, 0), octaveRival: null }).kind).toBe('aligned');
  });

  it('names the third partial last, with its wider tolerance', () => {
    expect(verdictOn(judged(3, 2, 12))).toMatchObject({ kind: 'third-sharp', third: 'twelfth' });
    expect(verdictOn(judged(3, 2, -11)).kind).toBe('third-flat');
    expect(verdictOn(judged(3, 2, 10)).kind).toBe('aligned');
  });

  it('counts what reads as 5 as within 5', () => {
    expect(verdictOn(judged(-5.4, 5.4, 0)).kind).toBe('aligned');
    expect(verdictOn(judged(-5.6, 0, 0)).kind).toBe('flat');
  });

  it('demands no octave and no third', () => {
    expect(verdictOn(judged(0, null, null)).kind).toBe('aligned');
  });

  it('judges notes above C6 by their fundamental only', () => {
    expect(verdictOn(judged(0, 30, 30, 85)).kind).toBe('in-tune');
    expect(verdictOn(judged(0, 30, 30, 84)).kind).toBe('octave-sharp');
    expect(verdictOn(judged(8, 0, 0, 88)).kind).toBe('sharp');
  });
});
