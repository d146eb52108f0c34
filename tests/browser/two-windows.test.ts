// Two windows of the app on one rack: what is done in one is neither lost nor written over by the other.
import { describe, expect, it } from 'vitest';
import { keptSettings } from './kept-records';
import { openWindow, save } from './open-window';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

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
});
