// How much sets of blows differ, against simulated pans that know nothing of what the app expects.
import { describe, expect, it } from 'vitest';
import { blowScatter } from '../../../src/domain/advice/response-noise';
import { matrix3 } from '../../../src/domain/numbers/three-partials';
import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { allWheres, type BlowFirmness, strengthOf } from '../../../src/domain/records/blow-places';
import type { MidiNote } from '../../../src/domain/tuning/units';
import { createHiddenResponse } from '../../../src/practice-pan/hidden-response';
import { seededRandom } from '../../../src/practice-pan/seeded-random';

const notes = notesOf(lowCLead);
/** Seeds that no constant of the model was ever set by. */
const seeds = Array.from({ length: 30 }, (_, k) => 10_001 + k);
const repeats = 40;

/** The fundamental's spread from set to set over the expected one, where the effect of the place is known. */
function spreadToExpected(firmness: BlowFirmness, count: number): number {
  const strength = strengthOf(firmness, count);
  let [spread, expected] = [0, 0];
  for (const seed of seeds) {
    const response = createHiddenResponse(seed);
    const chance = seededRandom(seed);
    const note = notes[seed % notes.length] ?? (60 as MidiNote);
    for (const where of allWheres) {
      const sets = Array.from({ length: repeats }, () =>
        Array.from({ length: count }, () => response.oneBlow(note, where, firmness, chance)).reduce(
          (sum, moved) => sum + moved[0],
          0,
        ),
      );
      const mean = sets.reduce((sum, each) => sum + each, 0) / repeats;
      spread += sets.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (repeats - 1);
      const squares = matrix3(() => (mean / strength) ** 2);
      expected += blowScatter(squares, { firmness, strength })[0][0];
    }
  }
  return Math.sqrt(spread / expected);
}

describe('the scatter that is expected of a set of blows', () => {
  it.each([
    ['light', 1],
    ['light', 3],
    ['light', 6],
    ['firm', 4],
    ['firm', 6],
  ] as const)('is about what it is for %s blows, %i of them', (firmness, count) => {
    const ratio = spreadToExpected(firmness, count);
    expect(ratio, `${ratio}`).toBeGreaterThan(0.83);
    expect(ratio, `${ratio}`).toBeLessThan(1.15);
  });

  const squares = matrix3(() => 16);

  it('grows more slowly than the set: chance from blow to blow averages out', () => {
    const [three, six] = [3, 6].map(
      (count) =>
        blowScatter(squares, { firmness: 'light', strength: strengthOf('light', count) })[0][0],
    );
    expect(six).toBeLessThan(2.5 * (three ?? 0));
  });

  it('is larger for a few firm blows than for as many light ones as do the same', () => {
    const strength = strengthOf('light', 6);
    const [light, firm] = (['light', 'firm'] as const).map(
      (firmness) => blowScatter(squares, { firmness, strength })[0][0],
    );
    expect(firm).toBeGreaterThan(1.5 * (light ?? Number.NaN));
  });
});
