// Two windows of the app on one rack: what is done in one is neither lost nor written over by the other.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { databaseName } from '../../src/storage/database/database-structure';
import { keptSettings } from './kept-records';
import type { OpenedApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

/** As if the note that the round asks for had been struck three times, so many notes long. */
async function hearNotes(page: Page, count: number): Promise<void> {
  for (let heard = 0; heard < count; heard++) {
    const before = await done(page);
    const next = await page.locator('.round').getAttribute('data-next');
    await tellStrikes(page, 3, { note: Number(next) });
    await expect.poll(() => done(page)).toBe(before + 1);
  }
}

/** Another window of the same app: the same profile, so the same rack. */
async function openWindow(app: OpenedApp, route: string): Promise<Page> {
  const page = await app.context.newPage();
  await page.goto(`${app.address}${route}`);
  await page.locator('main').waitFor();
  return page;
}

const save = (page: Page) => page.getByRole('button', { name: 'Save', exact: true }).click();
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
  it('that edit one pan keep both edits, and what is being typed', async () => {
    const app = await openWithRecords('#/pan/pan-1/details', { records: panWith({}, []) });
    try {
      const other = await openWindow(app, '#/pan/pan-1/details');
      await other.getByLabel('Maker').fill('the yard');
      await app.page.getByLabel('Owner').fill('Ada');
      await save(app.page);
      await expect.poll(() => other.getByLabel('Owner').inputValue()).toBe('Ada');
      expect(await other.getByLabel('Maker').inputValue()).toBe('the yard');
      await save(other);
      for (const page of [app.page, other]) {
        await page.locator('.about').getByText('Ada').waitFor();
        await page.locator('.about').getByText('the yard').waitFor();
      }
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('that write different things into one field keep both and ask', async () => {
    const app = await openWithRecords('#/pan/pan-1/details', { records: panWith({}, []) });
    try {
      const other = await openWindow(app, '#/pan/pan-1/details');
      await other.getByLabel('Remarks').fill('A dent on the left');
      await app.page.getByLabel('Remarks').fill('New skirt');
      await save(app.page);
      await app.page.getByText('New skirt').waitFor();
      await save(other);
      await app.page.getByText('Two people wrote different things about this pan.').click();
      await app.page.getByRole('button', { name: /^New skirt/ }).waitFor();
      await app.page.getByRole('button', { name: /^A dent on the left/ }).click();
      await save(app.page);
      for (const page of [app.page, other]) {
        await page.locator('.about').getByText('A dent on the left').waitFor();
        await expect.poll(() => page.getByText('Two people wrote').count()).toBe(0);
      }
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('that change different settings keep both', async () => {
    const app = await openWithRecords('#/settings', { records: [] });
    try {
      const other = await openWindow(app, '#/settings');
      await app.page.getByLabel('Band pitch, A4 in Hz').fill('442');
      await app.page.getByRole('button', { name: 'Set', exact: true }).click();
      await app.page.getByText('Now A = 442 Hz.').waitFor();
      await other.getByLabel('Light', { exact: true }).check();
      const kept = () => keptSettings(app.page);
      await expect.poll(kept).toMatchObject({ a4: 442, theme: 'light' });
      const third = await openWindow(app, '#/settings');
      await third.getByText('Now A = 442 Hz.').waitFor();
      expect(await third.getByLabel('Light', { exact: true }).isChecked()).toBe(true);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('share a round and its microphone: details are typed beside it, and it goes on in the other', async () => {
    const app = await openWithRecords(
      '#/pan/pan-1/begin',
      { records: panWith({}, []) },
      { beforeApp: standInEar },
    );
    try {
      const { page } = app;
      const details = await openWindow(app, '#/pan/pan-1/details');
      await details.getByLabel('Owner').fill('Ada');
      await page.bringToFront();
      await page.getByRole('button', { name: 'Start and listen' }).click();
      await untilListening(page);
      await hearNotes(page, 2);

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
      await hearNotes(page, 1);
      const heard = await done(page);
      expect(heard).toBe(3);
      await expect.poll(() => done(other)).toBe(heard);

      await page.getByRole('link', { name: 'Go on later' }).click();
      // The microphone goes off with the screen, and is free for the other window then.
      const locks = async () => (await navigator.locks.query()).held?.length;
      await expect.poll(() => page.evaluate(locks)).toBe(0);
      await other.bringToFront();
      await other.getByRole('button', { name: 'Go on listening' }).click();
      await untilListening(other);
      await hearNotes(other, 1);
      await other.getByRole('button', { name: 'Finish the round' }).click();
      // Of 29 notes 25 are missing: it asks.
      await other.getByRole('button', { name: 'Finish anyway' }).click();
      await other.locator('main.result').waitFor();

      expect(await onDisk(other, 'rounds')).toBe(1);
      expect(await onDisk(other, 'readings')).toBe(heard + 1);
      await page.getByText('Ada').waitFor();
      await page.getByRole('link', { name: 'Result' }).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
