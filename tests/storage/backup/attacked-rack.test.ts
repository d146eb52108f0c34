// The short version of `npm run bench:files`.
import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/practice-pan/seeded-random';
import { attack } from '../../benchmarks/files/attacked-rack';

it('300 changed backups crash nothing, and change nothing that is stored without a word', async () => {
  const failures: string[] = [];
  const counts = await attack(300, seededRandom(7), (failure) => failures.push(failure));
  expect(failures).toEqual([]);
  expect(counts).toMatchObject({ files: 300, crashed: 0, changed: 0, unnamed: 0 });
  // They are no good if none of them comes as far as the rack, or none says anything else.
  expect(counts.takenIn).toBeGreaterThan(100);
  expect(counts.named).toBeGreaterThan(20);
});
