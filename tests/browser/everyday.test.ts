// A player and a tuner on a usual day: how many taps and scrolls their way takes, and where the keyboard is on it.
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { openWithRecords } from './rack-seed';
import { leadNotes, panWith } from './seeded-pans';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

const phone = { width: 360, height: 740 };

/** Counts taps, and the scrolls that were needed before a tap. */
function hand(page: Page) {
  const count = { taps: 0, scrolls: 0 };
  const tap = async (target: Locator) => {
    await target.waitFor();
    const box = await target.boundingBox();
    const height = page.viewportSize()?.height ?? 0;
    if (!box || box.y < 0 || box.y + box.height > height + 1) count.scrolls++;
    await target.click();
    count.taps++;
  };
  return { count, tap };
}

describe('on a usual day', () => {
  it('a player hears the whole pan with three taps and no scroll, and no stray strike ends it', async () => {
    const records = panWith({ name: 'Heron' }, [{}]);
    const app = await openWithRecords(
      '#/',
      { records },
      { beforeApp: standInEar, viewport: phone },
    );
    try {
      const { page } = app;
      const { count, tap } = hand(page);
      await tap(page.locator('[data-pan="pan-1"]'));
      await tap(page.getByRole('button', { name: 'Quick round' }));
      await page.locator('main.round').waitFor();
      await untilListening(page);
      for (const note of leadNotes) await tellStrikes(page, 1, { note });
      await page.locator('main.round[data-left=""]').waitFor();
      await tellStrikes(page, 1, { note: 60 });
      expect(await page.locator('main.round').count()).toBe(1);
      await tap(page.getByRole('button', { name: 'Finish the round' }));
      await page.locator('main.result').waitFor();
      expect(count).toEqual({ taps: 3, scrolls: 0 });
      // The kind used last is offered first the next time.
      await page.goto(`${app.address}#/pan/pan-1/begin`);
      await page.locator('input[name="way"]').first().waitFor();
      expect(await page.locator('input[name="way"]').first().isChecked()).toBe(true);
      expect(await page.locator('label:has(input[name="way"])').first().textContent()).toMatch(
        /^Quick/,
      );
    } finally {
      await app.close();
    }
  });

  it('a tuner takes a round and is at the bench for the first blow with five taps', async () => {
    const records = panWith({ name: 'Heron' }, [{}]);
    const app = await openWithRecords(
      '#/',
      { records },
      { beforeApp: standInEar, viewport: phone },
    );
    try {
      const { page } = app;
      const { count, tap } = hand(page);
      await tap(page.locator('[data-pan="pan-1"]'));
      await tap(page.getByRole('link', { name: 'Start a round' }));
      await tap(page.getByRole('button', { name: 'Start and listen' }));
      await untilListening(page);
      for (let left = leadNotes.length; left > 0; left--) {
        const note = Number(await page.locator('main.round').getAttribute('data-next'));
        await tellStrikes(page, 3, { note, fundamental: note === 62 ? -20 : 1 });
        if (left > 1) {
          await page.waitForFunction(
            (was) => document.querySelector('main.round')?.getAttribute('data-next') !== was,
            String(note),
          );
        }
      }
      await page.locator('main.result').waitFor();
      await tap(page.locator('.note-row[data-note="62"], a.note-row').first());
      await tap(page.locator('.actions').getByRole('link', { name: 'Work on this note' }));
      await page.locator('main.bench').waitFor();
      expect(count.taps).toBeLessThanOrEqual(5);
      // What is measured afterwards is a round again, from the bench's own pan.
      await page.goto(`${app.address}#/pan/pan-1`);
      await page.getByRole('link', { name: 'Start a round' }).click();
      await page.getByRole('button', { name: 'Start and listen' }).click();
      await untilListening(page);
    } finally {
      await app.close();
    }
  });
});

describe('by keyboard', () => {
  it('each new screen has the focus at its heading', async () => {
    const app = await openWithRecords('#/', { records: panWith({ name: 'Heron' }, [{}]) });
    try {
      const { page } = app;
      const focused = () =>
        page.waitForFunction(() => document.activeElement?.tagName === 'H1', null, {
          timeout: 5000,
        });
      await page.locator('.skip-link').waitFor({ state: 'attached' });
      await page.locator('[data-pan="pan-1"]').focus();
      await page.keyboard.press('Enter');
      await page.locator('main.pan-page').waitFor();
      await focused();
      for (const screen of ['details', 'history', 'sheet', 'tuned', 'taken-out', 'begin']) {
        await page.locator(`main a[href$="/pan-1/${screen}"]`).first().focus();
        await page.keyboard.press('Enter');
        await page.waitForURL(new RegExp(`${screen}$`));
        await focused();
        await page.goBack();
        await page.locator('main.pan-page').waitFor();
        await focused();
      }
    } finally {
      await app.close();
    }
  });

  it('the main buttons of a pan come before its notes, and a link leads past what stands before them', async () => {
    const app = await openWithRecords('#/pan/pan-1', {
      records: panWith({ name: 'Heron' }, [{}]),
    });
    try {
      const { page } = app;
      await page.locator('main.pan-page .note').first().waitFor();
      const isBefore = await page.evaluate(() => {
        const main = document.querySelector('.pan-page .actions .main');
        const note = document.querySelector('.pan-page .note');
        if (!main || !note) return null;
        const follows = main.compareDocumentPosition(note) & Node.DOCUMENT_POSITION_FOLLOWING;
        const lowest = main.getBoundingClientRect().bottom > window.innerHeight - 100;
        return follows !== 0 && lowest;
      });
      expect(isBefore).toBe(true);
      const skip = page.getByRole('button', { name: 'Skip to the main buttons' });
      await skip.focus();
      expect((await skip.boundingBox())?.height).toBeGreaterThan(40);
      await page.keyboard.press('Enter');
      const inActions = () =>
        page.evaluate(() => document.activeElement?.closest('.actions') !== null);
      expect(await inActions()).toBe(true);
    } finally {
      await app.close();
    }
  });
});
