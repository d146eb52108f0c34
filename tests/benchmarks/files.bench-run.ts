// 100,000 changed backups taken in by a phone with a rack: what crashes, and what changes there without a word. A third
// has other bytes, a third other lines, and a third other values with all sums right. FILES sets another number.
import { expect, test } from 'vitest';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { attack } from './files/attacked-rack';

const files = Number(process.env['FILES'] ?? 100_000);
const seed = 19;

test('changed backups', async () => {
  const begun = performance.now();
  const failures: string[] = [];
  const counts = await attack(files, seededRandom(seed), (failure) => {
    if (failures.length < 5) failures.push(failure);
  });
  const line = (name: string, count: number | string) => `${name.padEnd(58)}${count}`;
  process.stdout.write(
    `${[
      '',
      ...failures.map((failure) => failure.slice(0, 2000)),
      line('changed backups (bytes, lines, values: a third each)', counts.files),
      line('refused', counts.refused),
      line('taken in, as far as they are good', counts.takenIn),
      line('entries that differ, told and kept beside', counts.named),
      line('stored entries changed (target 0)', counts.changed),
      line('crashed (target 0)', counts.crashed),
      line('changes of the rack without being named (target 0)', counts.unnamed),
      line('minutes', ((performance.now() - begun) / 60_000).toFixed(1)),
      '',
    ].join('\n')}\n`,
  );
  expect(counts).toMatchObject({ crashed: 0, changed: 0, unnamed: 0 });
});
