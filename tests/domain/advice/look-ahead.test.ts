// What a step is worth with all that comes after it.
import { describe, expect, it } from 'vitest';
import { leftAfter } from '../../../src/domain/advice/look-ahead';
import type { NoteErrors } from '../../../src/domain/advice/note-errors';
import {
  type PlannedPlace,
  planBlows,
  plannedPlaces,
  wrongNow,
} from '../../../src/domain/advice/plan-blows';
import { learnResponse, type ResponseModel } from '../../../src/domain/advice/response-model';
import { likelyOutcomes } from '../../../src/domain/numbers/likely-outcomes';
import { matrix3 } from '../../../src/domain/numbers/three-partials';
import { strengthOf } from '../../../src/domain/records/blow-places';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { instant, midiNote } from '../../../src/domain/tuning/units';

const { main, third } = usualTolerances.good;
const errorsOf = (fundamental: number, octave: number): NoteErrors => ({
  values: [fundamental, octave, 0],
  limits: [main, main, third],
  weights: [1 / main ** 2, 1 / main ** 2, 1 / third ** 2],
});
const note = midiNote(66);
const nothing = matrix3(() => 0);

function afterOneBlow(model: ResponseModel, errors: NoteErrors, place: string, side: string) {
  const places = plannedPlaces(note, model);
  const plan = planBlows(errors, places);
  const at = places.findIndex(({ where }) => where.place === place && where.side === side);
  const where = places[at]?.where;
  if (!where) throw new Error('no such place');
  const strength = strengthOf('light', 1);
  const [usual, expected] = [
    model.predict(note, where),
    model.predict(note, where, { firmness: 'light', strength }),
  ] as const;
  return { plan, places, left: leftAfter(errors, places, plan, { at, strength, usual, expected }) };
}

describe('the outcomes that stand for all', () => {
  it('have the mean and the covariance of standard normal values', () => {
    for (const i of [0, 1, 2] as const) {
      for (const j of [0, 1, 2] as const) {
        const product =
          likelyOutcomes.reduce((sum, each) => sum + each[i] * each[j], 0) / likelyOutcomes.length;
        expect(product).toBeCloseTo(i === j ? 1 : 0, 12);
      }
      expect(likelyOutcomes.reduce((sum, each) => sum + each[i], 0)).toBeCloseTo(0, 12);
    }
  });
});

describe('what is left after a step', () => {
  const untaught = learnResponse([], new Map(), instant(0));

  it('is what the best plan leaves of the moved note, where everything is known', () => {
    const sure: ResponseModel = {
      ...untaught,
      predict: (each, where, force) => ({
        ...untaught.predict(each, where, force),
        covariance: nothing,
        doubt: nothing,
      }),
    };
    const errors = errorsOf(-12, -8);
    const { left, places } = afterOneBlow(sure, errors, 'border', 'above');
    // One of three blows from above at the border raises all by 4/3 cents (blow-priors), so the octave stays as it is.
    const moved = planBlows(errorsOf(-12 + 4 / 3, -8), places);
    expect(left).toBeCloseTo(moved.left, 1);
  });

  it('is less for a blow that tells which way a place moves the octave, though it is as likely to harm', () => {
    const errors = errorsOf(0, -9);
    const { left, plan } = afterOneBlow(untaught, errors, 'glancing-long', 'above');
    expect(left).toBeLessThan(plan.left);
  });

  it('is no less for a blow that tells nothing about what is wrong', () => {
    const errors = errorsOf(0, -9);
    const about = (place: string) => afterOneBlow(untaught, errors, place, 'above').left;
    expect(about('glancing-long')).toBeLessThan(about('glancing-short'));
  });
});

describe('a plan', () => {
  const place = (effect: readonly [number, number, number], doubt: number): PlannedPlace => ({
    where: { place: 'border', side: 'above' },
    effect,
    doubt: [doubt, doubt, 0],
    scatter: [0, 0, 0],
  });

  it('of sure places is the least squares solution that has no strength below zero', () => {
    // −12 and −8 by (4, 4) and (0, 2): 3 and −2 without the limit; with it (4, 4) alone, 40/16 (both weigh the same).
    const { strengths, left } = planBlows(errorsOf(-12, -8), [
      place([4, 4, 0], 0),
      place([0, 2, 0], 0),
    ]);
    expect(strengths[0]).toBeCloseTo(2.5, 2);
    expect(strengths[1]).toBe(0);
    // −2 and +2 are left, both well within 5.
    expect(left).toBeCloseTo(8 / 25, 2);
  });

  it('brings a partial within its limit where squares alone would leave it outside', () => {
    // By squares alone (−6 + 2 s)² + 0.8 · (15 + 15) · s² is least at s = 3/7, which leaves −5.1.
    const { strengths } = planBlows(errorsOf(-6, 0), [place([2, 0, 0], 15)]);
    expect(-6 + 2 * (strengths[0] ?? 0)).toBeGreaterThan(-5);
  });
});

describe('what is wrong now', () => {
  it('is more for a note with a partial outside its limit than its squares alone', () => {
    expect(wrongNow(errorsOf(3, 4))).toBeCloseTo(1, 9);
    expect(wrongNow(errorsOf(0, -5.1))).toBeCloseTo(1.02 ** 2 + 3, 9);
  });
});
