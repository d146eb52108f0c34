// Beside a pan that fell: the looks, what is said about tonight, and the rules behind it.
import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../src/domain/pans/layouts/low-c-lead';
import { keptSettings } from './kept-records';
import { answer, button, faultsOf } from './knock-steps';
import { openApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

describe('an intact pan in the sun', () => {
  it('gets "wait" with a time, and no verdict, whatever its last round said', async () => {
    const records = panWith({}, [{ day: 0, off: { 60: { fundamental: -50 } } }]);
    const app = await openWithRecords(
      '#/pan/pan-1/knock',
      { records },
      {
        bypassPolicy: true,
        viewport: { width: 360, height: 740 },
      },
    );
    const { page } = app;
    try {
      await answer(page, ['heat']);
      expect(await page.locator('.seen').getAttribute('data-onward')).toBe('wait');
      expect(await button(page, 'Start the soft round').count()).toBe(0);
      expect(await faultsOf(app)).toEqual([]);
      await button(page, 'Keep this and wait').click();
      const sentence = page.locator('.sentence');
      await sentence.waitFor();
      expect(await sentence.getAttribute('data-verdict')).toBe('wait');
      expect(await sentence.textContent()).toMatch(/^Wait until \d\d:\d\d, then look again\.$/);
      expect(await page.locator('[data-reason="look"]').textContent()).toContain('shade');
      // It holds for whoever opens the app next.
      await page.reload();
      await sentence.waitFor();
      expect(await sentence.getAttribute('data-verdict')).toBe('wait');
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('somebody beside the van with no pan on the phone', () => {
  it('is at the first question in two taps, with answers of 60 px and more', async () => {
    const app = await openApp('#/', { bypassPolicy: true, viewport: { width: 360, height: 740 } });
    const { page } = app;
    try {
      await page.getByRole('link', { name: 'A pan was dropped' }).click();
      await page.getByRole('button', { name: lowCLead.name }).first().click();
      await page.locator('.look').waitFor();
      for (const name of ['Yes', 'No']) {
        const box = await button(page, name).boundingBox();
        expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(60);
      }
      await button(page, 'Yes').click();
      expect(await faultsOf(app)).toEqual([]);
      await page.goto(`${app.address}#/dropped`);
      await page
        .locator('.dropped')
        .getByRole('link', { name: /Lead, low C/ })
        .waitFor();
      expect(await faultsOf(app)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('a magnet under a sharp note', () => {
  it('is logged, and the pan and the rack remind of it until it is off', async () => {
    const records = panWith({}, [{ day: 0, off: { 81: { fundamental: 24 } } }]);
    const app = await openWithRecords('#/pan/pan-1/tonight', { records });
    const { page } = app;
    try {
      await button(page, 'I put a magnet on A5').click();
      await button(page, 'I took it off A5').waitFor();
      await page.goto(`${app.address}#/`);
      await page.getByText('magnet on A5').click();
      await page.getByRole('link', { name: /Magnet on A5/ }).click();
      await button(page, 'I took it off A5').click();
      await button(page, 'I put a magnet on A5').waitFor();
      await page.goto(`${app.address}#/pan/pan-1`);
      await page.locator('.pan-page').waitFor();
      await expect.poll(() => page.getByText('Magnet on').count()).toBe(0);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('the rules of tonight', () => {
  it('can be changed, count at once, and are kept', async () => {
    const records = panWith({}, [{ day: 0, off: { 62: { fundamental: -28 } } }]);
    const app = await openWithRecords(
      '#/pan/pan-1/tonight',
      { records },
      {
        bypassPolicy: true,
        viewport: { width: 360, height: 740 },
      },
    );
    const { page } = app;
    try {
      const sentence = page.locator('.sentence');
      await sentence.waitFor();
      expect(await sentence.textContent()).toBe('Play it.');
      await page.getByText('What decides').click();
      await page.getByLabel(/is left out/).fill('25');
      await expect.poll(() => sentence.textContent()).toBe('Play it without D4.');
      expect(await faultsOf(app)).toEqual([]);
      // It is shown at once; this is about what is on disk.
      const kept = async () => JSON.stringify(await keptSettings(page));
      await expect.poll(kept).toContain(':25');
      await page.reload();
      await expect.poll(() => sentence.textContent()).toBe('Play it without D4.');
    } finally {
      await app.close();
    }
  });
});
