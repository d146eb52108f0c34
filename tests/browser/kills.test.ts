// The short version of `npm run bench:kills`.
// Most of its time is six starts of the browser.
import { expect, test } from 'vitest';
import { killWhileSaving } from './kill-while-saving';

test('nothing that was said to be kept is lost or torn when the browser is killed', async () => {
  const { acknowledged, found, foundAtTheEnd } = await killWhileSaving(5, 4);
  expect(acknowledged).toHaveLength(5);
  expect(Math.min(...acknowledged)).toBeGreaterThan(0);
  for (const each of [...found, ...foundAtTheEnd]) {
    expect(each).toMatchObject({ lost: 0, torn: 0 });
    expect(each.whole).toBeGreaterThan(0);
  }
});
