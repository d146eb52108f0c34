// One tap too many: an early end is asked about, and what was taken out comes back.
import { describe, expect, it } from 'vitest';
import { instant } from '../../src/domain/tuning/units';
import { sampleVisit } from '../storage/rack/rack-sample';
import { axeFaults } from './axe-faults';
import { keptText } from './kept-records';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

const options = { beforeApp: standInEar, bypassPolicy: true };

describe('one tap too many', () => {
  it('asks before a round ends with notes missing, and a round that ended goes on', async () => {
    const records = panWith({ name: 'Heron' }, [{}]);
    const app = await openWithRecords('#/pan/pan-1/begin', { records }, options);
    try {
      const { page } = app;
      await page.getByRole('button', { name: 'Start and listen' }).click();
      await untilListening(page);
      await tellStrikes(page, 3, { note: 88 });
      await page.locator('main.round[data-done="1"]').waitFor();
      const finish = page.getByRole('button', { name: 'Finish the round' });
      await finish.click();
      await page.getByText('28 of 29 notes are missing').waitFor();
      // Nothing has ended: neither a second tap in the same place nor the main button ends it.
      await page.getByRole('button', { name: 'Keep measuring' }).click();
      await page.locator('main.round[data-done="1"]').waitFor();
      await finish.click();
      expect(await axeFaults(page)).toEqual([]);
      await page.getByRole('button', { name: 'Finish anyway' }).click();
      await page.locator('main.result').waitFor();
      // The pan stands as before, but for that note.
      await page.getByRole('link', { name: 'To the pan' }).click();
      await page.locator('main.pan-page').waitFor();
      expect(await page.locator('main').textContent()).not.toContain('28 not heard');
      await page.goBack();
      await page.getByRole('button', { name: 'Go on with this round' }).click();
      await page.locator('main.round[data-done="1"]').waitFor();
      await page.getByRole('button', { name: 'Go on listening' }).click();
      await untilListening(page);
      await tellStrikes(page, 3, { note: 76 });
      await page.locator('main.round[data-done="2"]').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('brings a visit back, by a bar that stays on the next screen and is reached by keyboard', async () => {
    const visit = { ...sampleVisit('visit-1'), who: 'Somebody' };
    const records = [...panWith({ name: 'Heron' }, [{}]), visit];
    const app = await openWithRecords('#/pan/pan-1/tuned', { records }, options);
    try {
      const { page } = app;
      await page.getByRole('button', { name: /^Take the visit of/ }).click();
      await page.getByText('No visit is written down yet.').waitFor();
      await page.getByRole('link', { name: 'Back' }).click();
      const bar = page.getByRole('complementary', { name: 'Taken out just now' });
      await bar.getByRole('status').getByText('Visit taken out.').waitFor();
      expect(await axeFaults(page)).toEqual([]);
      const undo = bar.getByRole('button', { name: 'Undo' });
      await undo.focus();
      await page.keyboard.press('Enter');
      await undo.waitFor({ state: 'detached' });
      await page.goBack();
      await page.getByText('Somebody').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('lists what was taken out within two taps, for a week, and puts it back', async () => {
    const now = Date.now();
    const day = 24 * 3600 * 1000;
    const visit = (id: string, days: number) => ({
      ...sampleVisit(id),
      who: `Tuner of ${id}`,
      visitedAt: instant(now - days * day),
    });
    const erased = (id: string, target: string, days: number) =>
      ({
        shape: 1,
        kind: 'erasure',
        id,
        pan: 'pan-1',
        at: instant(now - days * day),
        target,
      }) as never;
    const records = [
      ...panWith({ name: 'Heron' }, [{}]),
      visit('young', 2),
      visit('old', 9),
      erased('e-1', 'young', 1),
      erased('e-2', 'old', 8),
    ];
    const app = await openWithRecords('#/', { records }, options);
    try {
      const { page } = app;
      await page.locator('[data-pan="pan-1"]').click();
      await page.getByRole('link', { name: 'Taken out', exact: true }).click();
      await page.locator('[data-taken-out]').first().waitFor();
      expect(await page.locator('[data-taken-out]').count()).toBe(1);
      expect(await axeFaults(page)).toEqual([]);
      await page.getByRole('button', { name: /^Put it back: Visit/ }).click();
      await page.getByText('Nothing was taken out').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('keeps a visit once, however often "Keep it" is tapped', async () => {
    const app = await openWithRecords(
      '#/pan/pan-1/tuned',
      { records: panWith({ name: 'Heron' }, []) },
      options,
    );
    try {
      const { page } = app;
      await page.getByLabel('Who it was').fill('Somebody');
      await page.getByRole('button', { name: 'Keep it' }).dblclick();
      await page.getByText('Kept. Take a full round').waitFor();
      await page.locator('form').evaluate((form) => (form as HTMLFormElement).requestSubmit());
      await page.waitForTimeout(100);
      const kept = (await keptText(page)).split('\n').filter((row) => row.includes('tuner-visit'));
      expect(kept).toHaveLength(1);
    } finally {
      await app.close();
    }
  });

  it('takes a round out and has it back', async () => {
    const records = panWith({ name: 'Heron' }, [{}, { day: 30 }]);
    const app = await openWithRecords('#/pan/pan-1/result/round-30', { records }, options);
    try {
      const { page } = app;
      await page.getByRole('button', { name: 'Take this round out' }).click();
      await page.locator('main.pan-page').waitFor();
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.goto(`${app.address}#/pan/pan-1/history`);
      await page.locator('[data-round="round-30"]').waitFor();
    } finally {
      await app.close();
    }
  });
});
