// The pans are on the screen before the database is open, which takes longest on a rack of years.
import { describe, expect, it } from 'vitest';
import { panId } from '../../src/domain/records/rack-records';
import { sampleEdit } from '../storage/rack/rack-sample';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

declare global {
  interface Window {
    letDatabaseOpen(): void;
    rowsSeen: readonly number[];
  }
}

/** In the page, before the app: nobody hears that the database is open until `letDatabaseOpen` is called. */
function holdDatabase(): void {
  const isLet = new Promise<void>((done) => {
    window.letDatabaseOpen = done;
  });
  const listen = EventTarget.prototype.addEventListener;
  IDBOpenDBRequest.prototype.addEventListener = function (
    this: IDBOpenDBRequest,
    kind: string,
    listener: (event: Event) => void,
    options?: AddEventListenerOptions,
  ) {
    const later = (event: Event) => void isLet.then(() => listener.call(this, event));
    listen.call(this, kind, later, options);
  } as typeof listen;
}

/** In the page, before the app: how many rows there were, in order. */
function watchRows(): void {
  const seen: number[] = [];
  window.rowsSeen = seen;
  new MutationObserver(() => {
    const rows = document.querySelectorAll('.pan-row').length;
    if (rows > 0 && rows !== seen.at(-1)) seen.push(rows);
  }).observe(document, { childList: true, subtree: true });
}

describe('the rack', () => {
  it('shows its pans before its database is open, and says that it is still looking', async () => {
    const app = await openWithRecords('#/', { records: panWith({}, [{ day: 0 }]) });
    try {
      const { page, context } = app;
      const checked = page.locator('section:not([aria-busy]) .pan-row', { hasText: 'Heron' });
      await checked.waitFor();
      const need = await page.locator('.pan-row .need').textContent();
      await context.addInitScript(holdDatabase);
      await page.reload();
      await page.locator('section[aria-busy="true"] .pan-row', { hasText: 'Heron' }).waitFor();
      expect(await page.locator('.pan-row .need').textContent()).toBe(need);
      expect(await checked.count()).toBe(0);
      await page.evaluate(() => window.letDatabaseOpen());
      await checked.waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('draws the first of many pans, then all', async () => {
    const many = Array.from({ length: 60 }, (_, k) =>
      sampleEdit(`edit-${k}`, `Heron ${k + 1}`, panId(`pan-${k}`)),
    );
    const app = await openWithRecords('#/', { records: many });
    try {
      const { page, context } = app;
      const rows = page.locator('.pan-row');
      await page.locator('section:not([aria-busy]) .pan-row').nth(59).waitFor();
      await context.addInitScript(watchRows);
      await page.reload();
      await page.locator('section:not([aria-busy]) .pan-row').nth(59).waitFor();
      expect(await page.evaluate(() => window.rowsSeen)).toEqual([24, 60]);
      expect(await rows.last().textContent()).toContain('Heron 60');
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
