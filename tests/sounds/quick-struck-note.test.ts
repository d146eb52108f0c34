import { expect, it } from 'vitest';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { addStruckNote } from '../../src/practice-pan/struck-note';
import { addQuickNote } from './quick-struck-note';
import { partialMaker } from './scene';

it('a note made quickly is the one made sample by sample, to −70 dB after its first 3 ms', () => {
  const random = seededRandom(5);
  const maker = partialMaker(random, { wobbleDb: 10, wobbleCents: 0.3 });
  const partials = [
    maker(440, 1, 0.2, 0.001, 30),
    maker(880, 0.7, 0.15, 0.025, -18),
    maker(5274, 0.3, 0.05, 0.012, 12),
  ];
  const [slow, quick] = [addStruckNote, addQuickNote].map((add) => {
    const sound = new Float32Array(24_000);
    add(sound, 48_000, 0.01, { partials, onset: 0.002 }, 0.3);
    return sound;
  });
  if (!slow || !quick) throw new Error('no sound');
  const first = Math.round(0.013 * 48_000);
  const largest = slow.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const furthest = slow
    .subarray(first)
    .reduce((most, value, n) => Math.max(most, Math.abs(value - (quick[first + n] ?? 0))), 0);
  expect(largest).toBeGreaterThan(0.2);
  expect(furthest / largest).toBeLessThan(10 ** (-70 / 20));
});
