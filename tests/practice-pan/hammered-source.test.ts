import { describe, expect, it } from 'vitest';
import { usualProfessionalLimits } from '../../src/domain/advice/professional-limits';
import { usualTolerances } from '../../src/domain/tuning/tolerances';
import { cents, midiNote } from '../../src/domain/tuning/units';
import { verdictOn } from '../../src/domain/tuning/verdict';
import { createHammeredSource } from '../../src/practice-pan/hammered-source';
import type { PracticeTruth } from '../../src/practice-pan/practice-levels';

const rules = { limits: usualTolerances, professional: usualProfessionalLimits };
const note = midiNote(66);
const flat: PracticeTruth = {
  fundamentalCents: cents(-12),
  octaveCents: cents(-8),
  third: { kind: 'double-octave', cents: cents(3) },
};
const planted = { level: 'one-flat', planted: new Map([[note, flat]]) } as const;
const noRest = async () => {};

describe('a patient tuner on the same pan', () => {
  it('brings most flat notes within tolerance by the suggestions alone, and says how many sets it took', async () => {
    const seeds = Array.from({ length: 10 }, (_, k) => 301 + k);
    const outcomes = await Promise.all(
      seeds.map((seed) => createHammeredSource(seed, planted).patientWork([note], rules, noRest)),
    );
    const inTune = outcomes.filter(({ tuning }) => {
      const now = tuning.find((each) => each.note === note);
      return now && verdictOn(now).kind === 'aligned';
    });
    expect(inTune.length).toBeGreaterThanOrEqual(8);
    for (const { work } of outcomes) {
      expect(work).toMatchObject([{ note }]);
      expect(work[0]?.sets).toBeGreaterThan(0);
      expect(work[0]?.sets).toBeLessThanOrEqual(12);
    }
  });

  it('starts from the pan as it was at first, whatever was hammered since, and leaves this pan alone', async () => {
    const untouched = createHammeredSource(7, planted);
    const hammered = createHammeredSource(7, planted);
    hammered.hammer(note, { place: 'border', side: 'above' }, 'firm', 9);
    const before = hammered.tuning();
    expect(before).not.toEqual(untouched.tuning());
    const outcome = await hammered.patientWork([note], rules, noRest);
    expect(outcome).toEqual(await untouched.patientWork([note], rules, noRest));
    expect(hammered.tuning()).toEqual(before);
  });

  it('leaves notes alone that need nothing', async () => {
    const source = createHammeredSource(3, { level: 'one-flat' });
    const fine = source.tuning().find((each) => verdictOn(each).kind === 'aligned');
    if (!fine) throw new Error('no note in tune');
    const { work, tuning } = await source.patientWork([fine.note], rules, noRest);
    expect(work).toEqual([{ note: fine.note, sets: 0, end: 'leave' }]);
    expect(tuning).toEqual(source.tuning());
  });

  it('rests after each set, so that the screen stays alive', async () => {
    let rests = 0;
    const source = createHammeredSource(301, planted);
    const { work } = await source.patientWork([note], rules, async () => {
      rests++;
    });
    expect(rests).toBe(work[0]?.sets);
  });
});
