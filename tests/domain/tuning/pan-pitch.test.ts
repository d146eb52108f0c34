import { describe, expect, it } from 'vitest';
import { type PitchedNote, panPitchOf } from '../../../src/domain/tuning/pan-pitch';
import { cents, hertz, midiNote } from '../../../src/domain/tuning/units';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import * as fc from '../../properties';

const a4 = hertz(440);
const pitched = (values: readonly number[], sigma = 0.2): readonly PitchedNote[] =>
  values.map((value, k) => ({
    note: midiNote(60 + k),
    cents: cents(value),
    sigmaCents: cents(sigma),
  }));
const pitchOf = (values: readonly number[]) => {
  const pitch = panPitchOf(pitched(values), a4);
  if (!pitch) throw new Error('too few notes');
  return pitch;
};

describe('the pan pitch', () => {
  it('of the pan in a published list is 21 to 27 cents sharp of A = 440', () => {
    // Piano technicians' mailing list, 14 June 1996, "Tuning Steel pans": first partials of C5, G5 and C6.
    const pitch = pitchOf([26.0, 21.3, 26.7]);
    expect(pitch.cents).toBeGreaterThan(21.3);
    expect(pitch.cents).toBeLessThan(26.7);
    expect(pitch.a4).toBeCloseTo(440 * 2 ** (pitch.cents / 1200), 9);
  });

  it('is an A: +7.851 cents are A = 442 Hz', () => {
    // 1200 · log2(442 / 440), by arithmetic.
    const pitch = pitchOf(Array(12).fill(7.851));
    expect(pitch.a4).toBeCloseTo(442, 3);
    expect(pitch.spread).toBe(0);
  });

  it('says how far each note lies from it', () => {
    const pitch = pitchOf([10, 10, 10, 10, 10, -30]);
    expect(pitch.cents).toBeCloseTo(10, 6);
    expect(pitch.notes.at(-1)?.cents).toBeCloseTo(-40, 6);
    expect(pitch.notes.map((note) => note.isApart)).toEqual([...Array(5).fill(false), true]);
  });

  it('is unknown with fewer than three notes', () => {
    expect(panPitchOf(pitched([3, 4]), a4)).toBeNull();
    expect(panPitchOf([], a4)).toBeNull();
  });

  it('moves with the pan and does not depend on the order of the notes', () => {
    const values = fc.array(fc.double({ min: -60, max: 60, noNaN: true }), {
      minLength: 3,
      maxLength: 36,
    });
    fc.assert(
      fc.property(values, fc.double({ min: -50, max: 50, noNaN: true }), (notes, by) => {
        const pitch = pitchOf(notes);
        expect(pitchOf(notes.map((value) => value + by)).cents).toBeCloseTo(pitch.cents + by, 6);
        expect(pitchOf([...notes].reverse()).cents).toBeCloseTo(pitch.cents, 6);
        expect(pitch.cents).toBeGreaterThanOrEqual(Math.min(...notes) - 1e-9);
        expect(pitch.cents).toBeLessThanOrEqual(Math.max(...notes) + 1e-9);
        expect(pitch.sigmaCents).toBeGreaterThan(0);
      }),
    );
  });
});

describe('a planted pan pitch', () => {
  const notes = 29;
  const trials = 2000;
  const planted = -13;

  /** Errors over seeded pans whose notes scatter by `scatter`; the first `dropped` of them lie 40 cents lower. */
  function errorsOf(scatter: (random: () => number) => () => number, dropped = 0) {
    const random = seededRandom(4);
    const next = scatter(random);
    const errors: number[] = [];
    let within = 0;
    for (let trial = 0; trial < trials; trial++) {
      const values = Array.from(
        { length: notes },
        (_, k) => planted + next() - (k < dropped ? 40 : 0),
      );
      const pitch = pitchOf(values);
      errors.push(pitch.cents - planted);
      if (Math.abs(pitch.cents - planted) < 2 * pitch.sigmaCents) within++;
    }
    const mean = errors.reduce((sum, each) => sum + each, 0) / trials;
    const rms = Math.sqrt(errors.reduce((sum, each) => sum + each ** 2, 0) / trials);
    const near = errors.filter((each) => Math.abs(each) <= 0.5).length / trials;
    return { mean, rms, near, covered: within / trials };
  }
  const uniform = (half: number) => (random: () => number) => () => half * (2 * random() - 1);
  const normal = (sigma: number) => (random: () => number) => {
    const gaussian = gaussianFrom(random);
    return () => sigma * gaussian();
  };

  // The mean of 29 independent notes is off by scatter / √29: no estimator can find a planted pitch within
  // 0.5 cent for certain when the notes scatter by more than about 1.3 cents.
  it('is found within 0.5 cent when 29 notes scatter by 1 cent', () => {
    const { near, rms } = errorsOf(normal(1));
    expect(near, `${near} of pans within 0.5 cent, RMS ${rms}`).toBeGreaterThan(0.98);
  });

  it('is found as well as 29 notes that scatter by 8 cents allow', () => {
    const { mean, rms, near, covered } = errorsOf(normal(8));
    const figures = `RMS ${rms}, mean ${mean}, within 0.5: ${near}, within 2 σ: ${covered}`;
    expect(rms, figures).toBeLessThan(1.1 * (8 / Math.sqrt(notes)));
    expect(Math.abs(mean), figures).toBeLessThan(0.1);
    expect(covered, figures).toBeGreaterThan(0.9);
  });

  it('is found as well when the notes lie evenly between −8 and +8 cents', () => {
    const { rms, near, covered } = errorsOf(uniform(8));
    const figures = `RMS ${rms}, within 0.5: ${near}, within 2 σ: ${covered}`;
    expect(rms, figures).toBeLessThan(1.2 * (8 / Math.sqrt(3 * notes)));
    expect(covered, figures).toBeGreaterThan(0.9);
  });

  it('does not follow three notes that dropped by 40 cents', () => {
    // The mean would follow by 3 · 40 / 29 = 4.1 cents. Among notes that scatter by 8 cents themselves, 40 cents
    // off is not always told from far off by chance.
    for (const [scatter, most] of [
      [normal(1), 0.05],
      [normal(4), 0.1],
      [uniform(8), 0.25],
      [normal(8), 0.5],
    ] as const) {
      const whole = errorsOf(scatter);
      const dropped = errorsOf(scatter, 3);
      const figures = `${JSON.stringify(whole)} ${JSON.stringify(dropped)}`;
      expect(Math.abs(dropped.mean - whole.mean), figures).toBeLessThan(most);
      expect(dropped.rms, figures).toBeLessThan(1.2 * whole.rms);
    }
  });
});
