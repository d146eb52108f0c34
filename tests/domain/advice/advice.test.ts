import { describe, expect, it } from 'vitest';
import { type Advice, adviceFor, type BenchNote } from '../../../src/domain/advice/advice';
import type { NoteSound } from '../../../src/domain/advice/beyond-limits';
import type { BlowSet } from '../../../src/domain/advice/blow-sets';
import { noteTraits } from '../../../src/domain/advice/blow-sets';
import { choosePlace } from '../../../src/domain/advice/choose-place';
import { noteErrors } from '../../../src/domain/advice/note-errors';
import {
  type ProfessionalLimits,
  usualProfessionalLimits,
} from '../../../src/domain/advice/professional-limits';
import { learnResponse } from '../../../src/domain/advice/response-model';
import { doubleSecond } from '../../../src/domain/pans/layouts/double-second';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import type { JudgedNote } from '../../../src/domain/reading/judge-note';
import { allWheres } from '../../../src/domain/records/blow-places';
import type { MarkKind } from '../../../src/domain/records/rack-records';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, instant, type MidiNote, midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';
import { simulatedSets } from './blow-simulation';

interface Sketch {
  readonly note?: number;
  readonly fundamental?: number;
  readonly octave?: number | null;
  readonly rival?: number;
  readonly third?: number | null;
}

function judgedSample({
  note = 66,
  fundamental = 0,
  octave = 0,
  rival,
  third = 0,
}: Sketch): JudgedNote {
  const upper = (value: number) => ({
    cents: cents(fundamental + value),
    centsFromOwn: cents(value),
    sigmaCents: cents(0.2),
  });
  return {
    note: midiNote(note),
    fundamental: { cents: cents(fundamental), sigmaCents: cents(0.2) },
    octave: octave === null ? null : upper(octave),
    octaveRival: rival === undefined ? null : { ...upper(rival), note: null },
    third: third === null ? null : { kind: 'double-octave', ...upper(third) },
  };
}

const benchNote = (sketch: Sketch, part: Partial<BenchNote> = {}): BenchNote => ({
  layout: lowCLead,
  judged: judgedSample(sketch),
  isSettled: true,
  walking: null,
  decaySeconds: 0.3,
  marks: new Map(),
  others: new Map(),
  sets: [],
  ...part,
});

const untaught = learnResponse([], noteTraits(lowCLead), instant(0));
const rules = { limits: usualTolerances, professional: usualProfessionalLimits };
const advise = (sketch: Sketch, part: Partial<BenchNote> = {}, model = untaught): Advice =>
  adviceFor(benchNote(sketch, part), model, rules);

const set = (k: number, part: Partial<BlowSet>): BlowSet => ({
  id: `set-${k}`,
  at: instant(k * 60_000),
  note: midiNote(66),
  place: 'border',
  side: 'above',
  firmness: 'light',
  strength: 1,
  change: [2, 2, 2],
  sigma: [0.2, 0.2, 0.2],
  ...part,
});
const taught = (...sets: readonly Partial<BlowSet>[]) =>
  learnResponse(
    sets.map((each, k) => set(k, each)),
    noteTraits(lowCLead),
    instant(0),
  );
const neighbourSounds = (sound: NoteSound) =>
  new Map(lowCLead.drums.flatMap(({ notes }) => notes.map(({ note }) => [note, sound] as const)));

function blows(advice: Advice) {
  if (advice.kind !== 'blows') throw new Error(`${advice.kind}: ${JSON.stringify(advice.why)}`);
  return advice;
}

describe('a suggestion', () => {
  it('for a flat note with a flat octave is gentle blows on the ends of the long axis from above', () => {
    const advice = blows(advise({ fundamental: -12, octave: -8, third: 3 }));
    expect(advice).toMatchObject({
      place: 'long-ends',
      side: 'above',
      firmness: 'light',
      count: 2,
    });
    expect(advice.off).toEqual([
      { partial: 'fundamental', cents: -12 },
      { partial: 'octave', cents: -8 },
    ]);
  });

  it('for a sharp note is from below', () => {
    expect(blows(advise({ fundamental: 12 }))).toMatchObject({ place: 'border', side: 'below' });
  });

  it('says what is expected of each partial, and between which cents', () => {
    const { expected } = blows(advise({ fundamental: -12, octave: -8, third: 3 }));
    expected.interval90.forEach(([low, high], k) => {
      expect(low).toBeLessThan(expected.mean[k] ?? Number.NaN);
      expect(high).toBeGreaterThan(expected.mean[k] ?? Number.NaN);
    });
    expect(expected.mean[1]).toBeGreaterThan(expected.mean[0]);
  });

  it('names the neighbours and ring partners it may disturb, each once', () => {
    const { disturbs } = blows(advise({ fundamental: -15 }));
    const notes = disturbs.map(({ note }) => note);
    expect(new Set(notes).size).toBe(notes.length);
    expect(notes).not.toContain(66);
    // On a fourths-and-fifths lead F#4 lies between C#4 and B4, with its octave F#5 inside.
    for (const note of [61, 71, 78]) expect(notes).toContain(note);
    expect(disturbs[0]?.kind).toBe('neighbour');
  });

  it('grows bolder where the pan has shown that little happens', () => {
    const small = { change: [0.8, 0.8, 0.8] as const };
    const sets = [small, small, small, small].map((each, k) => set(k, each));
    const model = taught(small, small, small, small);
    const advice = blows(advise({ fundamental: -20 }, { sets }, model));
    expect(advice.count).toBeGreaterThan(blows(advise({ fundamental: -20 })).count);
  });

  it('is none where the places of the trade have shown the contrary: no place of another fault is taken instead', () => {
    const contrary = { place: 'middle', side: 'above', change: [4, 0, 0] as const } as const;
    const dull = { change: [0, -1, -1] as const } as const;
    const below = { place: 'middle', side: 'below', change: [-1, 0, 0] as const } as const;
    const ends = { place: 'long-ends', change: [0, -2, 0] as const } as const;
    const short = { place: 'short-ends', change: [0, 0, -4] as const } as const;
    const corners = { place: 'corners', change: [0, -3, 0] as const } as const;
    const still = (['glancing-long', 'glancing-short'] as const).flatMap((place) =>
      (['above', 'below'] as const).map((side) => ({ place, side, change: [0, 0, 0] as const })),
    );
    const model = taught(
      ...[contrary, dull, below, ends, short, corners, ...still].flatMap((each) => [
        each,
        each,
        each,
      ]),
    );
    expect(advise({ fundamental: -12 }, {}, model)).toMatchObject({
      kind: 'leave',
      why: { kind: 'nothing-helps' },
    });
  });

  it('is a small set where much could be overshot', () => {
    const advice = blows(advise({ fundamental: -6 }));
    expect([advice.firmness, Math.max(2, advice.count)]).toEqual(['light', 2]);
    expect(advice.overshoot).toBeLessThan(0.1);
    expect(advice.worsening).toBeLessThanOrEqual(4);
  });
});

describe('one blow that is far too hard', () => {
  const borderMoves = (change: number) => {
    const sets = Array.from({ length: 30 }, (_, k) =>
      set(k, { change: [change, change, change], sigma: [0.1, 0.1, 0.1] }),
    );
    return learnResponse(sets, noteTraits(lowCLead), instant(0));
  };

  it('may not do much more than the blow that is meant: the more a place does, the fewer blows are suggested', () => {
    const counts = [6, 12, 30].map((change) => {
      const advice = blows(advise({ fundamental: -12 }, {}, borderMoves(change)));
      expect(advice).toMatchObject({ place: 'border', side: 'above', firmness: 'light' });
      return advice.count;
    });
    expect(counts).toEqual([...counts].sort((one, other) => other - one));
    expect(counts.at(-1)).toBe(1);
  });
});

describe('the advice is to leave a note alone', () => {
  const why = (advice: Advice) => (advice.kind === 'blows' ? null : advice.why.kind);

  it('when all is within tolerance', () => {
    expect(why(advise({ fundamental: 4.9, octave: -4.9, third: 9.9 }))).toBe('aligned');
    expect(why(advise({ fundamental: 5.1 }))).not.toBe('aligned');
  });

  it('when a high note is within two cents, though the user asks for more', () => {
    const fine = { ...usualTolerances, good: { main: cents(1), third: cents(2) } };
    const high = benchNote({ note: 87, fundamental: 1.8 });
    expect(adviceFor(high, untaught, { ...rules, limits: fine })).toMatchObject({
      kind: 'leave',
      why: { kind: 'high-note' },
    });
    const low = benchNote({ fundamental: 1.8 });
    expect(why(adviceFor(low, untaught, { ...rules, limits: fine }))).not.toBe('high-note');
  });

  it('when the last three sets did not help', () => {
    const worse = (k: number) => set(k, { change: [-0.2, -0.2, -0.2] });
    const sets = [1, 2, 3].map(worse);
    expect(why(advise({ fundamental: -12 }, { sets }))).toBe('no-help');
    expect(why(advise({ fundamental: -12 }, { sets: sets.slice(1) }))).toBeNull();
    const better = (k: number) => set(k, { change: [1, 1, 1] });
    expect(why(advise({ fundamental: -12 }, { sets: [1, 2, 3].map(better) }))).toBeNull();
    // One of the three did help, though the other two took more away again.
    expect(
      why(
        advise(
          { fundamental: -12 },
          { sets: [worse(1), set(2, { change: [0.3, 0.3, 0.3] }), worse(3)] },
        ),
      ),
    ).toBeNull();
  });

  it('when nine sets of any kind did not help', () => {
    const trial = (k: number) => set(k, { strength: 1 / 3, change: [-0.1, 0, 0] });
    const trials = Array.from({ length: 9 }, (_, k) => trial(k + 1));
    expect(why(advise({ fundamental: -12 }, { sets: trials.slice(1) }))).not.toBe('no-help');
    expect(why(advise({ fundamental: -12 }, { sets: trials }))).toBe('no-help');
  });

  it('when it walks upwards, is not settled, or nobody knows which octave is its own', () => {
    expect(why(advise({ fundamental: -12 }, { walking: { centsPerStrike: cents(1) } }))).toBe(
      'walking',
    );
    expect(why(advise({ fundamental: -12 }, { isSettled: false }))).toBe('not-settled');
    expect(why(advise({ fundamental: -12, rival: 4 }))).toBe('octave-open');
  });

  it('when the doubt about every place is larger than what it would gain, and trials have told nothing', () => {
    // Every place was hit four times by a single light blow, up and down by chance.
    const sets = allWheres.flatMap((where, k) =>
      [1, -1, 0, 0].map((way, n) =>
        set(4 * k + n, { ...where, strength: 1 / 3, change: [0.3 * way, -0.3 * way, 0.2 * way] }),
      ),
    );
    const model = learnResponse(sets, noteTraits(lowCLead), instant(0));
    const errors = noteErrors(judgedSample({ fundamental: 5.5, octave: -5 }), usualTolerances);
    expect(['too-unsure', 'nothing-helps']).toContain(
      choosePlace(midiNote(66), errors, model, sets),
    );
  });

  it('when it is marked as dead', () => {
    expect(why(advise({ fundamental: -12 }, { marks: new Map([[midiNote(66), 'dead']]) }))).toBe(
      'dead',
    );
  });
});

describe('a note is for a professional', () => {
  const kind = (advice: Advice) => (advice.kind === 'professional' ? advice.why.kind : advice.kind);

  it('when it is more than 50 cents off, or beyond the user’s own limit', () => {
    expect(kind(advise({ fundamental: -50 }))).toBe('blows');
    expect(kind(advise({ fundamental: -50.5 }))).toBe('far-off');
    expect(kind(advise({ octave: 60 }))).toBe('far-off');
    const own: ProfessionalLimits = { ...usualProfessionalLimits, farthest: cents(20) };
    expect(
      kind(adviceFor(benchNote({ fundamental: -21 }), untaught, { ...rules, professional: own })),
    ).toBe('far-off');
  });

  it('when it has no octave where its neighbours have one', () => {
    const withOctaves = { others: neighbourSounds({ hasOctave: true, decaySeconds: 0.3 }) };
    expect(kind(advise({ fundamental: -12, octave: null }, withOctaves))).toBe('no-octave');
    const without = { others: neighbourSounds({ hasOctave: false, decaySeconds: 0.3 }) };
    expect(kind(advise({ fundamental: -12, octave: null }, without))).toBe('blows');
    expect(kind(advise({ note: 86, fundamental: -12, octave: null }, withOctaves))).toBe('blows');
  });

  it('when its sound is choked', () => {
    const others = neighbourSounds({ hasOctave: true, decaySeconds: 0.3 });
    expect(kind(advise({ fundamental: -12 }, { others, decaySeconds: 0.1 }))).toBe('choked');
    expect(kind(advise({ fundamental: -12 }, { others, decaySeconds: 0.2 }))).toBe('blows');
  });

  it('when it falls further with every strike', () => {
    expect(kind(advise({ fundamental: -12 }, { walking: { centsPerStrike: cents(-1) } }))).toBe(
      'falling',
    );
  });

  it('when it or another note of the same drum is cracked', () => {
    const cracked = (note: number) => new Map([[midiNote(note), 'cracked' as const]]);
    expect(kind(advise({ fundamental: -12 }, { marks: cracked(66) }))).toBe('cracked');
    expect(kind(advise({ fundamental: -12 }, { marks: cracked(88) }))).toBe('cracked');
    // F#3 is on the left drum of a double second, G3 on the right one.
    const onDouble = (marks: ReadonlyMap<MidiNote, MarkKind>) =>
      advise({ note: 54, fundamental: -12 }, { layout: doubleSecond, marks });
    expect(kind(onDouble(cracked(55)))).toBe('blows');
    expect(kind(onDouble(cracked(56)))).toBe('cracked');
  });
});

describe('whatever is known of a note', () => {
  const off = fc.integer({ min: -300, max: 300 }).map((tenths) => tenths / 10);
  const anySketch = fc.record({
    note: fc.integer({ min: 60, max: 88 }),
    fundamental: off,
    octave: fc.option(off),
    third: fc.option(off),
  });
  const anyModel = fc.integer({ min: 1, max: 50 }).map((seed) => {
    const pan = simulatedSets(seed);
    const sets = Array.from({ length: seed % 9 }, () => pan.next().set);
    return { model: learnResponse(sets, noteTraits(lowCLead), instant(0)), sets };
  });

  it('no blows are suggested for one that is marked as cracked or dead', () => {
    fc.assert(
      fc.property(
        anySketch,
        anyModel,
        fc.constantFrom('cracked' as const, 'dead' as const),
        fc.boolean(),
        (sketch, { model, sets }, mark, isSettled) => {
          const marks = new Map([[midiNote(sketch.note), mark]]);
          expect(advise(sketch, { marks, sets, isSettled }, model).kind).not.toBe('blows');
        },
      ),
      { numRuns: 100 },
    );
  });

  it('suggested blows are expected to help or to teach, could do little harm, and are never for an aligned note', () => {
    let suggested = 0;
    fc.assert(
      fc.property(anySketch, anyModel, (sketch, { model }) => {
        const advice = advise(sketch, {}, model);
        if (advice.kind !== 'blows') return;
        suggested++;
        expect(advice.off.length).toBeGreaterThan(0);
        expect(advice.overshoot).toBeGreaterThanOrEqual(0);
        expect(advice.overshoot).toBeLessThanOrEqual(1);
        if (advice.aim === 'mend') {
          expect(advice.gain).toBeGreaterThanOrEqual(advice.doubt);
          expect(advice.harm).toBeLessThanOrEqual(4);
        } else expect([advice.firmness, Math.max(2, advice.count)]).toEqual(['light', 2]);
      }),
      { numRuns: 60 },
    );
    expect(suggested).toBeGreaterThan(30);
  });
});
