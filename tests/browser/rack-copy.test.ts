// The pans are on the screen before the database is open, which takes longest on a rack of years.
import { describe, expect, it } from 'vitest';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

declare global {
  interface Window {
    letDatabaseOpen(): void;
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
});
