// The band leader at a desk: the printed order of pans and one sheet; a section, an owner, several pans at once.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { countTaps } from './counted-taps';
import { downloaded } from './downloaded';
import { button, faultsOf } from './knock-steps';
import { openWithRecords } from './rack-seed';
import { asPan, panWith } from './seeded-pans';

const phone = { width: 360, height: 740 } as const;

declare global {
  interface Window {
    printedTitles?: string[];
  }
}

/** Runs before the app: what is printed is told instead, with the heading that the paper bears. */
function tellPrinting(): void {
  window.printedTitles = [];
  window.print = () => {
    const heads = document.querySelectorAll('.sheet-head h1, .visit-paper h2');
    window.printedTitles?.push([...heads].map((head) => head.textContent).join('|'));
  };
}

const printed = (page: Page) => page.evaluate(() => window.printedTitles ?? []);

/** Thirty pans of two sections; one needs the tuner. */
const thirty = Array.from({ length: 30 }, (_, k) =>
  asPan(
    `pan-${k + 1}`,
    panWith(
      {
        name: `Pan ${k + 1}`,
        owner: k % 2 === 0 ? 'Wren' : 'Heron',
        family: k < 10 ? 'cello' : 'lead',
      },
      k === 4 ? [{ day: 0, off: { 62: { fundamental: -40 } } }] : [],
    ),
  ),
).flat();

describe('a band leader with thirty pans', () => {
  it('prints the order of pans and one sheet in at most 6 taps', async () => {
    const app = await openWithRecords(
      '#/',
      { records: thirty },
      { beforeApp: tellPrinting, bypassPolicy: true, viewport: phone },
    );
    const { page } = app;
    try {
      await page.locator('.pan-row').first().waitFor();
      const hand = countTaps();
      await hand.tap(page.getByRole('link', { name: 'Which pans first' }));
      await hand.tap(button(page, 'Print or save as PDF'));
      expect((await printed(page)).at(-1)).toContain('Which pans first');
      await hand.tap(page.locator('.visit-pans').getByRole('link', { name: 'Pan 5' }));
      await hand.tap(page.getByRole('link', { name: 'Sheet for the tuner' }));
      await hand.tap(button(page, 'Print or save as PDF'));
      expect((await printed(page)).at(-1)).toBe('Pan 5');
      expect(hand.taps, 'taps').toBeLessThanOrEqual(6);
      expect(hand.scrolls, 'scrolls').toBeLessThanOrEqual(3);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('has the tools above the pans, shows one section, and does something with several at once', async () => {
    const app = await openWithRecords(
      '#/',
      { records: thirty },
      { beforeApp: tellPrinting, bypassPolicy: true, viewport: phone },
    );
    const { page } = app;
    try {
      const first = page.locator('.pan-row').first();
      await first.waitFor();
      const top = (await first.boundingBox())?.y ?? 0;
      for (const name of ['Add a pan', 'Which pans first', 'Back up', 'Settings']) {
        const box = await page.getByRole('link', { name, exact: true }).boundingBox();
        expect(box?.y, name).toBeLessThan(top);
      }
      expect(await first.textContent()).toMatch(/Wren|Heron/);
      await page.getByLabel('Section').selectOption('cello');
      await expect.poll(() => page.locator('.pan-row').count()).toBe(10);
      expect(await faultsOf(app)).toEqual([]);
      await page.getByRole('link', { name: 'Several at once' }).click();
      await page.getByLabel('Pan 5').check();
      await page.getByLabel('Pan 6').check();
      expect(await faultsOf(app)).toEqual([]);
      await button(page, 'Print 2 sheets').click();
      await expect.poll(() => printed(page)).toContain('Pan 5|Pan 6');
      await button(page, 'Make a file of 2 pans').click();
      const sending = page.waitForEvent('download');
      await button(page, 'Save or send the file').click();
      const download = await sending;
      expect(download.suggestedFilename()).toMatch(/^ringwright-2-pans-/);
      expect((await downloaded(download)).length).toBeGreaterThan(500);
      await page.getByLabel('New owner').fill('Finch');
      await button(page, 'Give 2 pans this owner').click();
      await page.getByText('2 pans of Finch now.').waitFor();
      await page.getByRole('link', { name: 'Rack' }).click();
      await page.getByLabel('Find a pan').fill('Finch');
      await expect.poll(() => page.locator('.pan-row').count()).toBe(2);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
