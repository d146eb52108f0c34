import { describe, expect, it } from 'vitest';
import { roundChanges } from '../../../src/domain/rounds/round-changes';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import { leadNotes, resultSample, wholeLead } from './result-sample';

describe('what changed between two rounds', () => {
  const before = resultSample(
    wholeLead(() => ({ fundamental: 3, octave: 1, third: 4 })),
    { conditions: { temperature: 24 } },
  );

  it('is nothing where nothing moved', () => {
    const changes = roundChanges(before, before);
    expect(changes.notes.filter((note) => note.hasChanged)).toEqual([]);
    expect(changes.panShift).toMatchObject({ cents: 0, hasChanged: false });
    expect(changes.meanChange).toBe(0);
  });

  it('is named note by note and partial by partial, the largest first', () => {
    const now = resultSample(
      wholeLead((note) => ({
        fundamental: note === 64 ? -9 : 3,
        octave: note === 70 ? -5 : 1,
        third: note === 61 ? 7 : 4,
      })),
      { day: 30, conditions: { temperature: 31, standing: 'sun' } },
    );
    const changes = roundChanges(before, now);
    const changed = changes.notes.filter((note) => note.hasChanged);
    expect(changed.map(({ note }) => note)).toEqual([64, 70, 61]);
    expect(changed[0]?.fundamental.cents).toBeCloseTo(-12, 6);
    expect(changed[0]?.standings).toEqual({ before: 'good', now: 'playable' });
    expect(changed[1]?.octave?.cents).toBeCloseTo(-6, 6);
    expect(changed[1]?.beyondPan.hasChanged).toBe(false);
    expect(changed[2]?.third?.cents).toBeCloseTo(3, 6);
    expect(changes.temperatures).toEqual({ before: 24, now: 31 });
    expect(changes.isProvisional).toBe(true);
  });

  it('tells what the whole pan did from what single notes did', () => {
    const now = resultSample(
      wholeLead((note) => ({ fundamental: note === 64 ? -17 : -1, octave: 1, third: 4 })),
    );
    const { panShift, notes, meanChange } = roundChanges(before, now);
    expect(panShift?.cents).toBeCloseTo(-4, 2);
    expect(panShift?.hasChanged).toBe(true);
    const changed = notes.filter((note) => note.hasChanged);
    expect(changed.map(({ note }) => note)).toEqual([64]);
    expect(changed[0]?.fundamental.cents).toBeCloseTo(-20, 6);
    expect(changed[0]?.beyondPan.cents).toBeCloseTo(-16, 2);
    expect(meanChange).toBeCloseTo(16 / 29, 2);
  });

  it('does not take another A4 for a change', () => {
    const at442 = resultSample(
      wholeLead(() => ({ fundamental: 3, octave: 1, third: 4 })),
      { a4: 442 },
    );
    const { notes, panShift } = roundChanges(before, at442);
    expect(panShift?.cents).toBeCloseTo(0, 6);
    expect(notes[0]?.fundamental.cents).toBeCloseTo(0, 6);
  });

  it('says nothing about what only one of the rounds has', () => {
    const some = resultSample([
      { note: 60, octave: null, third: 4, thirdKind: 'twelfth' },
      { note: 62, octave: 3, rival: 14, third: 4 },
    ]);
    const { notes, panShift } = roundChanges(before, some);
    expect(notes.map(({ note }) => note).sort()).toEqual([60, 62]);
    expect(notes.map(({ octave }) => octave)).toEqual([null, null]);
    expect(notes.find(({ note }) => note === 60)?.third).toBeNull();
    expect(panShift).toBeNull();
    expect(roundChanges(resultSample([]), before)).toMatchObject({ notes: [], meanChange: null });
  });

  it('is called by chance for at most 1 note in 100, and is found from a cent and a half on', () => {
    const gaussian = gaussianFrom(seededRandom(3));
    const noisy = (moved: number) =>
      resultSample(
        wholeLead((note) => ({
          fundamental: note === 64 ? moved : 0,
          octave: 0,
          strikes: [0, 1, 2].map(() => 0.3 * gaussian()),
        })),
      );
    let byChance = 0;
    let found = 0;
    const trials = 60;
    for (let trial = 0; trial < trials; trial++) {
      const changes = roundChanges(noisy(0), noisy(1.5));
      const changed = changes.notes.filter(({ hasChanged }) => hasChanged);
      if (changed.some(({ note }) => note === 64)) found++;
      byChance += changed.filter(({ note }) => note !== 64).length;
    }
    const share = byChance / (trials * (leadNotes.length - 1));
    expect(share, `${byChance} changes by chance`).toBeLessThan(0.01);
    expect(found / trials, `found ${found} of ${trials}`).toBeGreaterThan(0.85);
  });
});
