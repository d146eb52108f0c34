// Two windows of the app and one microphone.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { databaseName } from '../../src/storage/database/database-structure';
import { openWindow, save } from './open-window';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { installStruckPan, takePan } from './struck-pan';

const hearing = {
  beforeApp: installStruckPan,
  flags: ['--autoplay-policy=no-user-gesture-required'],
} as const;

const done = (page: Page) =>
  page.locator('.round').evaluate((main) => Number((main as HTMLElement).dataset['done']));

/** How many records of a kind are on disk. */
const onDisk = (page: Page, store: 'readings' | 'rounds') =>
  page.evaluate(
    ({ name, store }) =>
      new Promise<number>((found, failed) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => failed(opening.error);
        opening.onsuccess = () => {
          const counting = opening.result.transaction(store).objectStore(store).count();
          counting.onsuccess = () => {
            opening.result.close();
            found(counting.result);
          };
        };
      }),
    { name: databaseName, store },
  );

describe('two windows', () => {
  it('share a round and its microphone: details are typed beside it, and it goes on in the other', async () => {
    const app = await openWithRecords('#/pan/pan-1/begin', { records: panWith({}, []) }, hearing);
    try {
      const { page } = app;
      const pan = createPracticePan(11);
      const details = await openWindow(app, '#/pan/pan-1/details');
      await details.getByLabel('Owner').fill('Ada');
      await page.bringToFront();
      await takePan(page, pan);
      await page.getByRole('button', { name: 'Start and listen' }).click();
      await page.locator('[data-microphone="listening"]').waitFor();
      await page.evaluate(() => window.struckPan.follow(0.9, 2));
      expect(await done(page)).toBeGreaterThanOrEqual(2);

      // What is being typed is still there, and saving it takes nothing from the round.
      expect(await details.getByLabel('Owner').inputValue()).toBe('Ada');
      await save(details);
      await details.locator('.about').getByText('Ada').waitFor();

      const other = await openWindow(app, `#${new URL(page.url()).hash.slice(1)}`);
      await other.getByRole('button', { name: 'Go on listening' }).click();
      await other
        .getByText('Another window of this app has the microphone. Stop it there, then try again.')
        .waitFor();
      // The first is not disturbed, and the second follows.
      await page.bringToFront();
      await page.evaluate(() => window.struckPan.follow(0.9, 3));
      const heard = await done(page);
      expect(heard).toBeGreaterThanOrEqual(3);
      await expect.poll(() => done(other)).toBe(heard);

      await page.getByRole('link', { name: 'Go on later' }).click();
      // The microphone goes off with the screen, and is free for the other window then.
      const locks = async () => (await navigator.locks.query()).held?.length;
      await expect.poll(() => page.evaluate(locks)).toBe(0);
      await other.bringToFront();
      await takePan(other, pan);
      await other.getByRole('button', { name: 'Go on listening' }).click();
      await other.locator('[data-microphone="listening"]').waitFor();
      await other.evaluate((until) => window.struckPan.follow(0.9, until), heard + 1);
      expect(await done(other)).toBeGreaterThanOrEqual(heard + 1);
      await other.getByRole('button', { name: 'Finish the round' }).click();
      await other.locator('main.result').waitFor();

      expect(await onDisk(other, 'rounds')).toBe(1);
      expect(await onDisk(other, 'readings')).toBeGreaterThanOrEqual(heard + 1);
      await page.getByText('Ada').waitFor();
      await page.getByRole('link', { name: 'Result' }).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
