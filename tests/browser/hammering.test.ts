// Who is told where to hammer: the confirmation, the settings about it, and the order of work on a pan.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { keptSettings } from './kept-records';
import type { OpenedApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { knockedLead } from './sheet-rack';

const open = () => openWithRecords('#/', { records: knockedLead }, { bypassPolicy: true });

const show = async ({ page }: OpenedApp, hash: string, there: string) => {
  await page.evaluate((to) => {
    window.location.hash = to;
  }, hash);
  await page.locator(there).first().waitFor();
};

/** Says on the bench that a tuner has shown how. */
async function confirm(app: OpenedApp): Promise<void> {
  await show(app, '#/pan/pan-1/bench/65', 'details.consent');
  await app.page.locator('details.consent summary').click();
  await app.page.locator('.consent-body button').click();
  await app.page.locator('details.consent').waitFor({ state: 'detached' });
}

const orderOf = (page: Page): Promise<readonly number[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.work-plan [data-work]')].map((each) =>
      Number(each.dataset['work']),
    ),
  );

async function untilKept(page: Page, part: string): Promise<void> {
  await expect.poll(async () => JSON.stringify(await keptSettings(page))).toContain(part);
}

describe('where to hammer', () => {
  it('is told to nobody who has not confirmed that a tuner has shown how', async () => {
    const app = await open();
    const { page } = app;
    try {
      await show(app, '#/settings', '#hand-keys');
      expect(await page.getByLabel('Suggest on the bench where to hammer next').count()).toBe(0);
      await show(app, '#/pan/pan-1', '.pan-page');
      await page.getByText('Sheet for the tuner').waitFor();
      expect(await page.locator('.work-plan').count()).toBe(0);
      await show(app, '#/pan/pan-1/bench/65', 'main.bench');
      expect(await page.locator('section.advice').count()).toBe(0);
    } finally {
      await app.close();
    }
  });

  it('has limits for a professional that can be set, and a bad one leaves the old one', async () => {
    const app = await open();
    const { page } = app;
    try {
      await confirm(app);
      await show(app, '#/settings', '#farthest');
      const farthest = page.locator('#farthest');
      await farthest.fill('3');
      await page
        .getByText('Enter a whole number from 5 to 200. The limit stays as it was.')
        .waitFor();
      await farthest.fill('35');
      await untilKept(page, '"farthest":35');
      await page.getByLabel('I have been shown how to hammer by a tuner').click();
      await untilKept(page, '"isTrained":false');
      await page.locator('#farthest').waitFor({ state: 'detached' });
    } finally {
      await app.close();
    }
  });
});

describe('the order of work on a pan', () => {
  it('is proposed to the trained, can be changed, and stays as it was left', async () => {
    const app = await open();
    const { page } = app;
    try {
      await confirm(app);
      await show(app, '#/pan/pan-1', '.work-plan');
      await page.locator('.work-plan summary').click();
      const proposed = await orderOf(page);
      expect(proposed.length).toBeGreaterThan(2);
      const [first = 0, second = 0, third = 0] = proposed;
      await page.locator(`[data-work="${first}"] button[aria-label$="later"]`).click();
      await expect.poll(() => orderOf(page)).toEqual([second, first, ...proposed.slice(2)]);
      await page.locator(`[data-work="${third}"] button[aria-label^="Leave"]`).click();
      const left = [second, first, ...proposed.slice(3)];
      await expect.poll(() => orderOf(page)).toEqual(left);
      await untilKept(page, JSON.stringify(left).slice(0, -1));
      await page.reload();
      await page.locator('.work-plan summary').click();
      await expect.poll(() => orderOf(page)).toEqual(left);
      await page.getByRole('button', { name: 'Propose an order again' }).click();
      await expect.poll(() => orderOf(page)).toEqual(proposed);
      await page.locator(`[data-work="${first}"] a`).click();
      await page.locator(`main.bench[data-note="${first}"]`).waitFor();
    } finally {
      await app.close();
    }
  });
});
