// The fourteen cases on which field tuners agree, as sentences; untaught, and on pans that have taught 5 and 20 sets.
import { describe, expect, it } from 'vitest';
import { type Advice, adviceFor } from '../../../src/domain/advice/advice';
import { noteTraits } from '../../../src/domain/advice/blow-sets';
import {
  changeOfErrors,
  isJudged,
  type NoteErrors,
  noteErrors,
} from '../../../src/domain/advice/note-errors';
import { usualProfessionalLimits } from '../../../src/domain/advice/professional-limits';
import { learnResponse, type ResponseModel } from '../../../src/domain/advice/response-model';
import { mapThree, partialIndices } from '../../../src/domain/numbers/three-partials';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import type { JudgedNote } from '../../../src/domain/reading/judge-note';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, instant, midiNote } from '../../../src/domain/tuning/units';
import { seededRandom } from '../../../src/practice-pan/seeded-random';
import { simulatedSets } from './blow-simulation';
import { againstOwn, fourteenFaults, type KnownFault } from './fourteen-faults';
import type { Plant } from './tune-by-advice';

const traits = noteTraits(lowCLead);
const untaught = learnResponse([], traits, instant(0));

/** A pan of which this many sets at any place on any note were logged. */
function taughtBy(count: number, seed: number): ResponseModel {
  const pan = simulatedSets(seed, 14, 29);
  return learnResponse(
    Array.from({ length: count }, () => pan.next().set),
    traits,
    instant(3_600_000),
  );
}

function judgedAs(plant: Plant, isTopNote = false): JudgedNote {
  const [fundamental, octave, third] = plant;
  const [, ownOctave, ownThird] = againstOwn(plant);
  const upper = (value: number, own: number) => ({
    cents: cents(value),
    centsFromOwn: cents(own),
    sigmaCents: cents(0.2),
  });
  return {
    note: midiNote(isTopNote ? 87 : 66),
    fundamental: { cents: cents(fundamental), sigmaCents: cents(0.2) },
    octave: upper(octave, ownOctave),
    octaveRival: null,
    third: { kind: 'double-octave', ...upper(third, ownThird) },
  };
}

function advise(plant: Plant, model: ResponseModel, isTopNote = false): Advice {
  const rules = { limits: usualTolerances, professional: usualProfessionalLimits };
  return adviceFor(
    {
      layout: lowCLead,
      judged: judgedAs(plant, isTopNote),
      isSettled: true,
      walking: null,
      decaySeconds: 0.3,
      marks: new Map(),
      others: new Map(),
      sets: [],
    },
    model,
    rules,
  );
}

const isWithin = (errors: NoteErrors, values: readonly number[], k: 0 | 1 | 2) =>
  Math.abs(values[k] ?? Number.NaN) <= errors.limits[k];

/** What a suggestion is expected to move out that is good now. */
function movedOut(plant: Plant, advice: Advice, isTopNote = false): readonly number[] {
  if (advice.kind !== 'blows') return [];
  const errors = noteErrors(judgedAs(plant, isTopNote), usualTolerances);
  const change = changeOfErrors(advice.expected.mean);
  const after = mapThree(errors.values, (value, k) => value + change[k]);
  return partialIndices.filter(
    (k) => isJudged(errors, k) && isWithin(errors, errors.values, k) && !isWithin(errors, after, k),
  );
}

const drawn = (known: KnownFault, seed: number): Plant => known.draw(seededRandom(seed * 31 + 5));
const seeds = [1, 2, 3, 4, 5, 6, 7, 8];

describe.each(fourteenFaults.map((known) => [known.name, known] as const))(
  'the advice for %s',
  (_, known) => {
    const { answer, fault, isTopNote = false } = known;

    it('is what the trade says, on a pan that has shown nothing', () => {
      for (const plant of [known.sample, ...seeds.map((seed) => drawn(known, seed))]) {
        const advice = advise(plant, untaught, isTopNote);
        if (typeof answer === 'string') expect(advice.kind, `${plant}`).toBe(answer);
        else {
          expect(advice.kind, `${plant}`).toBe('blows');
          if (advice.kind !== 'blows') continue;
          expect(answer).toContainEqual({ place: advice.place, side: advice.side });
          expect(advice.step.fault).toBe(fault);
          expect(advice.later).toEqual([]);
        }
      }
    });

    it.each([5, 20])(
      'may take another place after %i sets, but never moves out what is good',
      (count) => {
        let places = 0;
        for (const seed of seeds) {
          const model = taughtBy(count, seed);
          for (const plant of [known.sample, drawn(known, seed)]) {
            const advice = advise(plant, model, isTopNote);
            expect(movedOut(plant, advice, isTopNote), `${plant}, pan ${seed}`).toEqual([]);
            if (typeof answer === 'string') expect(advice.kind).toBe(answer);
            if (advice.kind !== 'blows') continue;
            // Of the trade's for this fault, or one that moves only a part of what must move.
            const { place, side, step } = advice;
            expect(step.places).toContainEqual({ place, side });
            if (fault === step.fault) expect(answer).toContainEqual({ place, side });
            else places++;
          }
        }
        expect(places).toBeLessThanOrEqual(seeds.length);
      },
    );
  },
);

describe('a note with two faults', () => {
  it('is mended in steps that are told before the first blow', () => {
    const advice = advise([-12, 0, 18], untaught);
    if (advice.kind !== 'blows') throw new Error(advice.kind);
    expect(advice.step.fault).toBe('fundamental-flat');
    expect(advice.later.map((each) => each.fault)).toEqual(['third-sharp']);
    const upper = advise([0, 12, -18], untaught);
    if (upper.kind !== 'blows') throw new Error(upper.kind);
    expect([upper.step.fault, ...upper.later.map((each) => each.fault)]).toEqual([
      'octave-sharp',
      'third-flat',
    ]);
  });
});
