// The quickest hand there can be, on the slowest phone: it acts in the very moment in which a screen appears.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { defaultSettings } from '../../src/domain/settings/settings';
import { openWithRecords } from './rack-seed';
import { knockedLead } from './sheet-rack';

interface Act {
  /** Where the element is. */
  readonly hash: string;
  readonly element: string;
  /** A click, a key of this code, or this text typed. */
  readonly does: 'click' | { readonly key: string } | { readonly text: string };
}

/** Goes to a screen and acts before it is painted: no frame, no timer and no later event comes in between. */
const actAtOnce = (page: Page, act: Act): Promise<void> =>
  page.evaluate(
    ({ hash, element: wanted, does }) =>
      new Promise<void>((done) => {
        const watch = new MutationObserver(() => {
          const element = document.querySelector<HTMLElement>(wanted);
          if (!element) return;
          watch.disconnect();
          if (does === 'click') element.click();
          else if ('key' in does) {
            const { key } = does;
            element.dispatchEvent(new KeyboardEvent('keydown', { code: key, key, bubbles: true }));
          } else {
            (element as HTMLTextAreaElement).value = does.text;
            element.dispatchEvent(new InputEvent('input', { bubbles: true }));
          }
          done();
        });
        watch.observe(document, { subtree: true, childList: true });
        window.location.hash = hash;
      }),
    act,
  );

const open = () =>
  openWithRecords('#/', {
    records: knockedLead,
    settings: {
      ...defaultSettings,
      handKeys: { keep: null, next: { kind: 'key', code: 'PageDown' } },
    },
  });

describe('in the first moment of a screen', () => {
  it('a bound key does on the bench what it is bound to', async () => {
    const app = await open();
    try {
      const { page } = app;
      await actAtOnce(page, {
        hash: '#/bench/74',
        element: 'main.bench',
        does: { key: 'PageDown' },
      });
      await page.waitForURL(/#\/listen$/);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('a tap on the bench that was open before begins to listen', async () => {
    const app = await open();
    try {
      const { page } = app;
      await page.goto(`${app.address}#/bench/74`);
      await page.locator('main.bench').waitFor();
      await page.goto(`${app.address}#/`);
      await page.locator('main.rack').waitFor();
      await actAtOnce(page, {
        hash: '#/bench/74',
        element: 'main.bench .actions .main',
        does: 'click',
      });
      // Where it hears nothing for this bench it would offer to listen still.
      await page.getByRole('button', { name: 'Done' }).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('what is typed on the sheet for the tuner stays', async () => {
    const app = await open();
    try {
      const { page } = app;
      await actAtOnce(page, {
        hash: '#/pan/pan-1/sheet',
        element: '#request-wanted',
        does: { text: 'Look at the rim' },
      });
      await page.locator('.sheet-table').waitFor();
      const wanted = page.getByLabel('What is wanted');
      await wanted.focus();
      await wanted.press('End');
      await page.keyboard.type(' first');
      expect(await wanted.inputValue()).toBe('Look at the rim first');
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('the way back from listening turns the microphone off', async () => {
    const app = await open();
    try {
      const { page } = app;
      await page.evaluate(() => {
        // In the same breath: the tap that listens, and the way back as soon as there is one.
        const watch = new MutationObserver(() => {
          const screen = document.querySelector('main:not(.rack) #readout');
          if (!screen) return;
          watch.disconnect();
          window.location.hash = '#/settings';
        });
        watch.observe(document, { subtree: true, childList: true });
        document.querySelector<HTMLElement>('a.listen')?.click();
      });
      await page.locator('#hand-keys').waitFor();
      await page.goto(`${app.address}#/listen`);
      const microphone = page.locator('[data-microphone]');
      await expect.poll(() => microphone.getAttribute('data-microphone')).toBe('idle');
      const locks = async () => (await navigator.locks.query()).held?.length;
      await expect.poll(() => page.evaluate(locks)).toBe(0);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
