import { expect, it } from 'vitest';
import { loadOnce } from '../../../src/state/asking/load-once';

it('loads when it is first wanted, and once only', async () => {
  let loads = 0;
  const part = loadOnce(async () => ++loads);
  expect(loads).toBe(0);
  expect(await Promise.all([part(), part()])).toEqual([1, 1]);
  expect(await part()).toBe(1);
});

it('tries again after a failure, which everybody hears of who waited', async () => {
  let tries = 0;
  const part = loadOnce(async () => {
    tries++;
    if (tries === 1) throw new Error('no network');
    return tries;
  });
  const failed = await Promise.allSettled([part(), part()]);
  expect(failed.map(({ status }) => status)).toEqual(['rejected', 'rejected']);
  expect(await part()).toBe(2);
});
