import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import type { PracticeLevel } from '../../../src/domain/ports/practice-port';
import { usualBenchSettings } from '../../../src/domain/settings/bench-settings';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { hertz, midiNote } from '../../../src/domain/tuning/units';
import { createHammeredSource } from '../../../src/practice-pan/hammered-source';
import { createPracticeBenchModel } from '../../../src/state/bench/practice-bench-model';

const note = midiNote(66);
const border = { place: 'border', side: 'above' } as const;

function practiceTest({ seed = 301, a4 = 440, fails = false } = {}) {
  const calls: string[] = [];
  const asked: (readonly [PracticeLevel, number])[] = [];
  const model = createPracticeBenchModel({
    pans: async (level, pitch) => {
      asked.push([level, pitch]);
      if (fails) throw new Error('no network');
      return createHammeredSource(seed, { level, a4: pitch });
    },
    listen: {
      beginPractice: async () => void calls.push('begin'),
      strikePractice: (_source, struck) => void calls.push(`strike ${struck}`),
      stop: async () => void calls.push('stop'),
    },
    settings: {
      a4: signal(hertz(a4)),
      limits: signal(usualTolerances),
      bench: signal(usualBenchSettings),
    },
    rest: async () => {},
  });
  return { model, calls, asked };
}

describe('practising with a hammer', () => {
  it('begins with a pan of the level that was chosen, tuned to the band’s pitch', async () => {
    const { model, calls, asked } = practiceTest({ a4: 442 });
    expect(model.view.value.kind).toBe('levels');
    await model.begin('dropped');
    expect(asked).toEqual([['dropped', 442]]);
    expect(model.view.value).toMatchObject({ kind: 'pan', level: 'dropped', worked: [] });
    model.strike(note);
    expect(calls).toEqual(['begin', `strike ${note}`]);
  });

  it('moves the metal and counts the blows on each note, in the order worked', async () => {
    const { model } = practiceTest();
    await model.begin('one-flat');
    const now = () => {
      if (model.view.value.kind !== 'pan') throw new Error('no pan');
      return model.view.value;
    };
    const before = now().source.tuning();
    model.hammer(note, border, 'light', 2);
    model.hammer(midiNote(70), border, 'firm', 1);
    model.hammer(note, border, 'light', 1);
    expect(now().source.tuning()).not.toEqual(before);
    expect(now().before).toEqual(before);
    expect(now().worked).toEqual([
      { note, blows: 3 },
      { note: 70, blows: 1 },
    ]);
  });

  it('ends with what was spoiled and with what patience would have made of the same notes', async () => {
    const { model } = practiceTest();
    await model.begin('one-flat');
    const { view } = model;
    const start = view.value.kind === 'pan' ? view.value.before : [];
    const good = start.find(
      ({ note: each, fundamental }) => each < 80 && Math.abs(fundamental.cents) < 3,
    );
    if (!good) throw new Error('no note in tune');
    model.hammer(good.note, border, 'firm', 12);
    await model.finish();
    expect(view.value).toMatchObject({
      kind: 'over',
      outcome: { spoiled: [{ note: good.note, wasWorked: true }] },
      patient: { outcome: { spoiled: [] }, work: [{ note: good.note }] },
    });
  });

  it('has nothing to compare where nothing was hammered', async () => {
    const { model } = practiceTest();
    await model.begin('some-out');
    await model.finish();
    expect(model.view.value).toMatchObject({
      kind: 'over',
      outcome: { gained: [], spoiled: [], unchanged: [] },
      patient: null,
    });
  });

  it('says so where the pan cannot be loaded, and can be begun again', async () => {
    const { model } = practiceTest({ fails: true });
    await model.begin('one-flat');
    expect(model.view.value.kind).toBe('failed');
    model.leave();
    expect(model.view.value.kind).toBe('levels');
  });

  it('forgets a pan that comes after it was left', async () => {
    const { model } = practiceTest();
    const coming = model.begin('one-flat');
    model.leave();
    await coming;
    expect(model.view.value.kind).toBe('levels');
  });
});
