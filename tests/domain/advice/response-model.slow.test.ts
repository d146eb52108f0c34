import { describe, expect, it } from 'vitest';
import { priorOf } from '../../../src/domain/advice/blow-priors';
import { type BlowSet, noteTraits } from '../../../src/domain/advice/blow-sets';
import { learnResponse } from '../../../src/domain/advice/response-model';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { allWheres, blowPlaces } from '../../../src/domain/records/blow-places';
import { cents, instant, midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';
import { simulatedSets } from './blow-simulation';

const traits = noteTraits(lowCLead);
const now = instant(3_600_000);
const minute = 60_000;
const note = midiNote(66);
const middleBelow = { place: 'middle', side: 'below' } as const;

const set = (k: number, fundamental: number, part: Partial<BlowSet> = {}): BlowSet => ({
  ...middleBelow,
  id: `set-${k}`,
  at: instant(k * minute),
  note,
  firmness: 'light',
  strength: 1,
  change: [cents(fundamental), cents(0.5), cents(0.5)],
  sigma: [cents(0.2), cents(0.2), cents(0.2)],
  ...part,
});

/** Seeds that no constant of the model was ever set by. */
const seeds = Array.from({ length: 150 }, (_, k) => 10_001 + k);

interface Score {
  readonly coverage: number;
  readonly errorToPrior: number;
}

/** Learns from some sets of every simulated pan and predicts ten more. */
function score(setCount: number, placeCount: number, noteCount: number): Score {
  const prior = learnResponse([], traits, now);
  const sum = { inside: 0, all: 0, error: 0, priorError: 0 };
  for (const seed of seeds) {
    const pan = simulatedSets(seed, placeCount, noteCount);
    const sets = Array.from({ length: setCount }, () => pan.next().set);
    const model = learnResponse(sets, traits, now);
    for (let k = 0; k < 10; k++) {
      const { set: next, truth } = pan.next();
      const prediction = model.predict(next.note, next, next);
      const guess = prior.predict(next.note, next, next);
      for (const i of [0, 1, 2] as const) {
        const [low, high] = prediction.interval90[i];
        sum.all++;
        if (truth[i] >= low && truth[i] <= high) sum.inside++;
        sum.error += (truth[i] - prediction.mean[i]) ** 2;
        sum.priorError += (truth[i] - guess.mean[i]) ** 2;
      }
    }
  }
  return { coverage: sum.inside / sum.all, errorToPrior: sum.error / sum.priorError };
}

describe('the learned response to blows', () => {
  it.each([
    ['five places on six notes', 5, 6],
    ['five places on one note', 5, 1],
    ['three places on two notes', 3, 2],
    ['all places on all notes', 14, 29],
  ])(
    'after ten sets at %s holds 85 to 95 of 100 outcomes in its 90 % intervals',
    (_, places, notes) => {
      const { coverage } = score(10, places, notes);
      expect(coverage, `${coverage}`).toBeGreaterThanOrEqual(0.85);
      expect(coverage, `${coverage}`).toBeLessThanOrEqual(0.95);
    },
  );

  it.each([
    ['five places on six notes', 5, 6, 1],
    // One set for each place: what is learned of one place does not say much about others.
    ['five places on one note', 5, 1, 0.8],
    ['all places on all notes', 14, 29, 1],
  ])(
    'after five sets at %s errs less than the expectation of the trade',
    (_, places, notes, most) => {
      const { errorToPrior } = score(5, places, notes);
      expect(errorToPrior, `${errorToPrior}`).toBeLessThan(most);
    },
  );

  it('is the same whatever the order in which the sets come', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1000 }),
        fc.integer({ min: 1, max: 14 }),
        fc.infiniteStream(fc.nat()),
        (seed, count, choices) => {
          const pan = simulatedSets(seed);
          const sets = Array.from({ length: count }, () => pan.next().set);
          const left = [...sets];
          const mixed = sets.flatMap(() => left.splice(choices.next().value % left.length, 1));
          const one = learnResponse(sets, traits, now);
          const other = learnResponse(mixed, traits, now);
          for (const where of allWheres) {
            expect(other.predict(note, where)).toEqual(one.predict(note, where));
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  it('does not depend on which of two sets was the earlier one, but for their age', () => {
    const [one, other] = [set(1, 2), set(1, 5, { id: 'set-0' })];
    const swapped = [
      { ...one, id: 'set-0' },
      { ...other, id: 'set-1' },
    ];
    const mean = learnResponse([one, other], traits, now).predict(note, middleBelow).mean;
    const again = learnResponse(swapped, traits, now).predict(note, middleBelow).mean;
    mean.forEach((value, k) => {
      expect(again[k]).toBeCloseTo(value, 9);
    });
  });

  it('begins with what the trade expects', () => {
    const model = learnResponse([], traits, now);
    for (const where of allWheres) {
      expect(model.predict(note, where).mean).toEqual(priorOf(where).mean);
    }
  });

  it('moves towards what a note did, and half as much towards it on a note it has not seen', () => {
    const sets = [1, 2, 3, 4].map((k) => set(k, 10));
    const model = learnResponse(sets, traits, now);
    const here = model.predict(note, middleBelow).mean[0];
    const there = model.predict(midiNote(61), middleBelow).mean[0];
    expect(here).toBeGreaterThan(8);
    expect(there).toBeGreaterThan(5);
    expect(there).toBeLessThan(here);
  });

  it('learns a little about other places: a soft pan is soft all over', () => {
    const model = learnResponse(
      [1, 2, 3].map((k) => set(k, 11)),
      traits,
      now,
    );
    expect(model.predict(note, { place: 'border', side: 'above' }).mean[0]).toBeGreaterThan(4.2);
    expect(model.predict(note, { place: 'border', side: 'below' }).mean[0]).toBeLessThan(-4.2);
  });

  it('is surer after more sets', () => {
    const widthAfter = (count: number) => {
      const sets = Array.from({ length: count }, (_, k) => set(k, 4 + (k % 3) / 2));
      const [low, high] = learnResponse(sets, traits, now).predict(note, middleBelow).interval90[0];
      return high - low;
    };
    expect(widthAfter(8)).toBeLessThan(0.7 * widthAfter(0));
    expect(widthAfter(3)).toBeLessThan(widthAfter(1));
  });

  it('takes twice the strength for twice the change', () => {
    const firm = learnResponse(
      [1, 2, 3].map((k) => set(k, 12, { firmness: 'firm', strength: 2 })),
      traits,
      now,
    );
    const light = learnResponse(
      [1, 2, 3].map((k) => set(k, 6)),
      traits,
      now,
    );
    const [one, other] = [firm, light].map((model) => model.predict(note, middleBelow).mean[0]);
    expect(Math.abs((one ?? 0) - (other ?? 9))).toBeLessThan(0.5);
  });

  it('lets an old set weigh less than a new one', () => {
    const year = 365 * 24 * 60 * minute;
    const late = instant(10 * year);
    const one = set(1, 9, { at: instant(late - minute) });
    const old = { ...one, at: instant(late - 5 * year) };
    const mean = (each: BlowSet) =>
      learnResponse([each], traits, late).predict(note, middleBelow).mean[0];
    expect(mean(one)).toBeGreaterThan(mean(old) + 0.5);
    expect(mean(old)).toBeGreaterThan(4);
  });

  it('names a set that contradicts the others, and is not led astray by it', () => {
    const usual = [1, 2, 3, 4, 5].map((k) => set(k, 4));
    const odd = set(6, -15);
    const model = learnResponse([...usual, odd], traits, now);
    expect(model.isContradicting(odd)).toBe(true);
    for (const each of usual) expect(model.isContradicting(each)).toBe(false);
    // The plain mean of the six would be 0.8.
    expect(model.predict(note, middleBelow).mean[0]).toBeGreaterThan(3);
  });

  it('names a set before it is learned from, too', () => {
    const model = learnResponse(
      [1, 2, 3, 4, 5].map((k) => set(k, 4)),
      traits,
      now,
    );
    expect(model.isContradicting(set(7, -15))).toBe(true);
    expect(model.isContradicting(set(7, 5))).toBe(false);
  });

  it('learns from what was measured of a set and leaves out what was not', () => {
    const sets = [1, 2, 3].map((k) => set(k, 9, { change: [cents(9), null, null] }));
    const model = learnResponse(sets, traits, now);
    expect(model.predict(note, middleBelow).mean[0]).toBeGreaterThan(6);
    expect(Math.abs(model.predict(note, middleBelow).mean[1])).toBeLessThan(0.5);
    const empty = learnResponse([set(1, 0, { change: [null, null, null] })], traits, now);
    expect(empty.predict(note, middleBelow).mean).toEqual(priorOf(middleBelow).mean);
  });

  it('works for a note without a pan', () => {
    const model = learnResponse(
      [1, 2, 3].map((k) => set(k, 9)),
      new Map(),
      now,
    );
    expect(model.predict(note, middleBelow).mean[0]).toBeGreaterThan(6);
  });

  it('never gives an interval that is turned round or no number, whatever was kept', () => {
    const value = fc.option(fc.double({ min: -500, max: 500, noNaN: true }));
    const sigma = fc.double({ min: 0, max: 50, noNaN: true });
    const anySet = fc.record({
      id: fc.uuid(),
      at: fc.integer({ min: 0, max: 2e12 }).map(instant),
      note: fc.integer({ min: 60, max: 63 }).map(midiNote),
      place: fc.constantFrom(...blowPlaces),
      side: fc.constantFrom('above' as const, 'below' as const),
      firmness: fc.constant('light' as const),
      strength: fc.double({ min: 1 / 3, max: 600, noNaN: true }),
      change: fc.tuple(value, value, value),
      sigma: fc.tuple(sigma, sigma, sigma),
    });
    fc.assert(
      fc.property(fc.array(anySet, { maxLength: 12 }), (sets) => {
        const { mean, interval90 } = learnResponse(sets, traits, now).predict(note, middleBelow);
        interval90.forEach(([low, high], k) => {
          expect(low).toBeLessThan(mean[k] ?? Number.NaN);
          expect(high).toBeGreaterThan(mean[k] ?? Number.NaN);
        });
      }),
      { numRuns: 100 },
    );
  });
});

describe('what is expected before anything was learned', () => {
  it('is in the directions of the trade', () => {
    // U. Kronman, "Steel Pan Tuning", 1992, ch. 24: blows around the border make the field smaller, and it sounds higher.
    expect(priorOf({ place: 'border', side: 'above' }).mean.every((cents) => cents > 0)).toBe(true);
    // The rest is common practice without a source.
    const signs = (where: Parameters<typeof priorOf>[0]) => priorOf(where).mean.map(Math.sign);
    expect(signs({ place: 'border', side: 'below' })).toEqual([-1, -1, -1]);
    expect(signs({ place: 'middle', side: 'above' })).toEqual([-1, 0, 0]);
    expect(signs({ place: 'middle', side: 'below' })).toEqual([1, 0, 0]);
    const [fundamental, octave, third] = priorOf({ place: 'long-ends', side: 'above' }).mean;
    expect(octave).toBeGreaterThan(fundamental);
    expect(third).toBe(0);
    expect(signs({ place: 'glancing-long', side: 'above' })).toEqual([0, 0, 0]);
  });

  it('is wider than it is large where the direction is not always the same', () => {
    const { mean, own } = priorOf({ place: 'middle', side: 'above' });
    expect(own[0]).toBeGreaterThan(Math.abs(mean[0]));
  });
});

describe('a place of which little is known', () => {
  const where = { place: 'glancing-long', side: 'above' } as const;
  const oneBlow: BlowSet = {
    ...where,
    id: 'a',
    at: instant(0),
    note: midiNote(66),
    firmness: 'light',
    strength: 1 / 3,
    change: [0, 1.5, 0],
    sigma: [0.2, 0.2, 0.2],
  };

  it('is not taken for well known after one blow, which may have been a weak one', () => {
    const { mean, doubt } = learnResponse([oneBlow], new Map(), instant(0)).predict(
      midiNote(66),
      where,
    );
    expect(mean[1]).toBeGreaterThan(1);
    expect(mean[1]).toBeLessThan(4.5);
    expect(Math.sqrt(doubt[1][1])).toBeGreaterThan(2);
  });
});
