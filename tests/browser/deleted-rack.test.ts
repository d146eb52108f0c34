// The browser deletes the database, as Chromium does with a damaged one: the app says so and takes a backup in.
import { describe, expect, it } from 'vitest';
import { downloaded } from './downloaded';
import type { OpenedApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

const said = 'The browser has deleted what was kept here.';

async function deleteRack({ page, context, address }: OpenedApp): Promise<void> {
  // The rack leaves its trace a moment after it is shown.
  await page.waitForFunction(() => localStorage.length > 0);
  await page.goto('about:blank');
  const session = await context.newCDPSession(page);
  const { origin } = new URL(address);
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await page.goto(`${address}#/`);
  await page.locator('main').waitFor();
}

describe('a rack that the browser has deleted', () => {
  it('is missed, and comes back from the last backup', async () => {
    const app = await openWithRecords(
      '#/',
      { records: panWith({}, [{ day: 0 }]) },
      { ownBrowser: true },
    );
    try {
      const { page } = app;
      await page.locator('.pan-row', { hasText: 'Heron' }).waitFor();
      expect(await page.getByText(said).count()).toBe(0);
      await page.getByRole('link', { name: 'Back up' }).click();
      await page.getByRole('button', { name: 'Make the file' }).click();
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Save or send the file' }).click();
      const file = await download;
      const buffer = await downloaded(file);

      await deleteRack(app);
      await page.getByText(said).waitFor();
      await page
        .getByText(/1 pan and 29 readings were here\. Take your last backup in\./)
        .waitFor();
      await page.getByRole('link', { name: 'Take a backup in' }).click();
      await page
        .locator('main.exchange input[type="file"]')
        .setInputFiles({ name: file.suggestedFilename(), mimeType: 'application/gzip', buffer });
      await page.getByRole('button', { name: 'Take this pan over' }).click();
      await page.getByText('Heron is on your rack now.').waitFor();
      await page.getByRole('link', { name: 'Rack', exact: true }).click();
      await page.locator('.pan-row', { hasText: 'Heron' }).waitFor();
      await expect.poll(() => page.getByText(said).count()).toBe(0);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('is not spoken of any more once the user goes on without it', async () => {
    const app = await openWithRecords(
      '#/',
      { records: panWith({}, [{ day: 0 }]) },
      { ownBrowser: true },
    );
    try {
      const { page } = app;
      await page.locator('.pan-row', { hasText: 'Heron' }).waitFor();
      await deleteRack(app);
      await page.getByRole('button', { name: 'Go on without them' }).click();
      await page.getByText(said).waitFor({ state: 'detached' });
      await page.reload();
      await page.getByText('No pans are kept here yet.').waitFor();
      expect(await page.getByText(said).count()).toBe(0);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
