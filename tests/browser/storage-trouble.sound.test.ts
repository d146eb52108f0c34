// When the phone fills up in the middle of a round: nothing lost, and a way on.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { databaseName } from '../../src/storage/database/database-structure';
import { openWithRecords } from './rack-seed';
import { reopen } from './reopen-app';
import { panWith } from './seeded-pans';
import { installStruckPan, takePan } from './struck-pan';

declare global {
  interface Window {
    /** From now on nothing can be written, as on a full phone, until it is called with false. */
    fillPhone?: (isFull: boolean) => void;
  }
}

const roundData = (page: Page, name: 'next' | 'done') =>
  page.locator('.round').evaluate((main, of) => (main as HTMLElement).dataset[of] ?? '', name);

const full = 'The phone is full, so this was not saved. Delete photos or films, then try again.';

describe('a full phone', () => {
  it('keeps a reading waiting, names no next note before it is on disk, and goes on once there is room', async () => {
    const app = await openWithRecords(
      '#/pan/pan-1/begin',
      { records: panWith({}, []) },
      {
        beforeApp: [installStruckPan, installFillingPhone],
        flags: ['--autoplay-policy=no-user-gesture-required'],
      },
    );
    try {
      const { page } = app;
      await takePan(page, createPracticePan(11));
      await page.getByRole('button', { name: 'Start and listen' }).click();
      await page.locator('[data-microphone="listening"]').waitFor();
      // That the round was begun is on disk.
      await expect.poll(() => page.evaluate(roundCount, databaseName)).toBe(1);
      await page.evaluate(() => window.fillPhone?.(true));
      const first = await roundData(page, 'next');
      // Three strikes settle it; a busy machine may lose some.
      for (let k = 0; k < 9 && (await page.getByText(full).count()) === 0; k++) {
        await page.evaluate((note) => window.struckPan.strike([note], 0.9), Number(first));
      }
      await page.getByText(full).waitFor();
      expect(await roundData(page, 'next')).toBe(first);
      expect(await roundData(page, 'done')).toBe('0');
      await page.evaluate(() => window.fillPhone?.(false));
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByText(full).waitFor({ state: 'detached' });
      await page.locator('.round[data-done="1"]').waitFor();
      expect(await roundData(page, 'next')).not.toBe(first);
      await page.evaluate(() => window.struckPan.follow(0.9, 2));
      const done = await roundData(page, 'done');
      expect(Number(done)).toBeGreaterThanOrEqual(2);
      await reopen(app, new URL(page.url()).hash);
      await page.locator(`.round[data-done="${done}"]`).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

/**
 * Chromium remembers for half a minute how much room there was, so a quota cannot be lowered in the middle of a
 * round; the silent tests and the store's own use the browser's.
 */
function installFillingPhone(): void {
  const put = IDBObjectStore.prototype.put;
  let isFull = false;
  IDBObjectStore.prototype.put = function (...wanted) {
    if (isFull) throw new DOMException('No room', 'QuotaExceededError');
    return put.apply(this, wanted);
  };
  window.fillPhone = (now) => {
    isFull = now;
  };
}

const roundCount = (name: string) =>
  new Promise<number>((done, failed) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => failed(opening.error);
    opening.onsuccess = () => {
      const count = opening.result.transaction('rounds').objectStore('rounds').count();
      count.onsuccess = () => {
        opening.result.close();
        done(count.result);
      };
    };
  });
