// When the phone cannot keep anything: a sentence on the screen, nothing lost, and a way on.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { databaseName } from '../../src/storage/database/database-structure';
import { keptText } from './kept-records';
import { type OpenedApp, openApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

/** Sets how much the app may keep; none: as much as the phone has. Chromium remembers the old value for a while. */
async function setQuota({ context, page, address }: OpenedApp, quotaSize?: number): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send('Storage.overrideQuotaForOrigin', {
    origin: new URL(address).origin,
    ...(quotaSize === undefined ? {} : { quotaSize }),
  });
}

/** Goes on with `route` in a fresh page, as after closing the app and opening it. */
async function reopen({ page, address }: OpenedApp, route: string): Promise<void> {
  await page.goto(`${address}${route}`);
  await page.reload();
  await page.locator('main').waitFor();
}

async function addPan(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: 'Add a pan' }).click();
  await page.getByRole('button', { name: /take this layout/i }).click();
  await page.getByLabel('Name of the pan').fill(name);
  await page.getByRole('button', { name: 'Put it on the rack' }).click();
}

const roundData = (page: Page, name: 'next' | 'done') =>
  page.locator('.round').evaluate((main, of) => (main as HTMLElement).dataset[of] ?? '', name);

const full = 'The phone is full, so this was not saved. Delete photos or films, then try again.';

describe('a full phone', () => {
  it('keeps a new pan waiting, and puts it on the rack once there is room', async () => {
    const app = await openApp('#/', { ownBrowser: true });
    try {
      const { page } = app;
      await setQuota(app, 1);
      await addPan(page, 'Heron');
      await page.getByText(full).waitFor();
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByText(full).waitFor();
      await setQuota(app);
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByRole('heading', { name: 'Heron' }).waitFor();
      await reopen(app, '#/');
      await page.getByText('Heron').waitFor();
      expect(await page.locator('.pan-row').count()).toBe(1);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('keeps a reading waiting, names no next note before it is on disk, and goes on once there is room', async () => {
    const app = await openWithRecords(
      '#/pan/pan-1/begin',
      { records: panWith({}, []) },
      {
        beforeApp: [standInEar, installFillingPhone],
        ownBrowser: true,
      },
    );
    try {
      const { page } = app;
      await page.getByRole('button', { name: 'Start and listen' }).click();
      await untilListening(page);
      // That the round was begun is on disk.
      await expect.poll(() => page.evaluate(roundCount, databaseName)).toBe(1);
      await page.evaluate(() => window.fillPhone?.(true));
      const first = await roundData(page, 'next');
      // Three strikes settle it.
      await tellStrikes(page, 3, { note: Number(first) });
      await page.getByText(full).waitFor();
      expect(await roundData(page, 'next')).toBe(first);
      expect(await roundData(page, 'done')).toBe('0');
      await page.evaluate(() => window.fillPhone?.(false));
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByText(full).waitFor({ state: 'detached' });
      await page.locator('.round[data-done="1"]').waitFor();
      expect(await roundData(page, 'next')).not.toBe(first);
      await tellStrikes(page, 3, { note: Number(await roundData(page, 'next')) });
      await page.locator('.round[data-done="2"]').waitFor();
      const done = await roundData(page, 'done');
      await reopen(app, new URL(page.url()).hash);
      await page.locator(`.round[data-done="${done}"]`).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

function removeStorage(): void {
  Object.defineProperty(window, 'indexedDB', { value: undefined });
}

describe('a browser that keeps nothing', () => {
  const nothing = 'This browser keeps nothing here, so no pan can be kept. Listening works.';

  it('says so on the rack, when a pan is added and when a backup is made, and still listens', async () => {
    const app = await openApp('#/', { beforeApp: removeStorage });
    try {
      const { page } = app;
      await page.getByText(nothing).waitFor();
      await addPan(page, 'Heron');
      await page.getByText('Not saved.').waitFor();
      await page.getByText(nothing).waitFor();
      await page.getByRole('link', { name: 'Back' }).click();
      await page.getByRole('link', { name: 'Back up' }).click();
      await page.getByRole('button', { name: 'Make the file' }).click();
      await page.getByText(nothing).waitFor();
      await page.getByRole('link', { name: 'Back' }).click();
      await page.getByRole('link', { name: 'Listen' }).click();
      await page.getByText('Listening.').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('says so where a link leads to a pan', async () => {
    const app = await openApp('#/pan/pan-1', { beforeApp: removeStorage });
    try {
      await app.page.getByText(nothing).waitFor();
      await app.page.getByRole('link', { name: 'Back' }).click();
      await app.page.getByRole('link', { name: 'Listen' }).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

declare global {
  interface Window {
    /** Ends all connections to the database without a word, as browsers do to an app in the background. */
    loseConnections?: () => number;
    /** From now on there are no new ones either, until it is called with false. */
    refuseConnections?: (refused: boolean) => void;
    /** From now on nothing can be written, as on a full phone, until it is called with false. */
    fillPhone?: (isFull: boolean) => void;
  }
}

/**
 * Chromium remembers for half a minute how much room there was, so a quota cannot be lowered in the middle of a
 * round; the test above and the store's own use the browser's.
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

function holdConnections(): void {
  const held: IDBDatabase[] = [];
  const open = IDBFactory.prototype.open;
  let isRefused = false;
  IDBFactory.prototype.open = function (...wanted) {
    if (isRefused) throw new DOMException('Connection to the server was lost', 'UnknownError');
    const request = open.apply(this, wanted);
    request.addEventListener('success', () => held.push(request.result));
    return request;
  };
  window.loseConnections = () => {
    const lost = held.splice(0);
    for (const each of lost) each.close();
    return lost.length;
  };
  window.refuseConnections = (refused) => {
    isRefused = refused;
  };
}

describe('a lost connection', () => {
  it('is opened again without a word, and what is saved is kept', async () => {
    const app = await openWithRecords(
      '#/pan/pan-1/details',
      { records: panWith({}, []) },
      { beforeApp: holdConnections, ownBrowser: true },
    );
    try {
      const { page } = app;
      await page.getByLabel('Owner').fill('Ada');
      expect(await page.evaluate(() => window.loseConnections?.())).toBeGreaterThan(0);
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      await page.locator('.about').getByText('Ada').waitFor();
      // What was typed is shown before it is on the disk.
      await expect.poll(() => keptText(page)).toContain('Ada');
      expect(await page.getByText('Not saved.').count()).toBe(0);
      await reopen(app, '#/pan/pan-1');
      await page.locator('.about').getByText('Ada').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('that does not come back is said, what was typed waits, and one tap saves it once it is back', async () => {
    const app = await openWithRecords(
      '#/pan/pan-1/details',
      { records: panWith({}, []) },
      { beforeApp: holdConnections, ownBrowser: true },
    );
    try {
      const { page } = app;
      await page.getByLabel('Owner').fill('Ada');
      await page.evaluate(() => {
        window.refuseConnections?.(true);
        window.loseConnections?.();
      });
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      await page.getByText('The phone could not read or write the rack.').first().waitFor();
      await page.evaluate(() => window.refuseConnections?.(false));
      await page.getByRole('button', { name: 'Try again' }).click();
      await expect.poll(() => keptText(page)).toContain('Ada');
      await page.getByText('Not saved.').waitFor({ state: 'detached' });
      await reopen(app, '#/pan/pan-1');
      await page.locator('.about').getByText('Ada').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('a rack that a newer version of the app has written', () => {
  it('is left alone, and every screen says so', async () => {
    const app = await openWithRecords('#/', { records: panWith({}, []) }, { ownBrowser: true });
    try {
      const { page } = app;
      await page.evaluate(raise, databaseName);
      const newer = 'The rack was written by a newer version of the app.';
      await reopen(app, '#/');
      await page.getByText(newer).waitFor();
      await addPan(page, 'Egret');
      await page.getByText(newer).waitFor();
      await reopen(app, '#/pan/pan-1');
      await page.getByText(newer).waitFor();
      await page.getByRole('link', { name: 'Back' }).click();
      await page.getByRole('link', { name: 'Listen' }).click();
      await page.getByText('Listening.').waitFor();
      expect(await page.evaluate(editNames, databaseName)).toEqual(['edit-1']);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

/** In the page: raises the version, as a newer app in another window would. */
const raise = (name: string) =>
  new Promise<void>((done, failed) => {
    const opening = indexedDB.open(name, 99);
    opening.onerror = () => failed(opening.error);
    opening.onsuccess = () => {
      opening.result.close();
      done();
    };
  });

const editNames = (name: string) =>
  new Promise<readonly IDBValidKey[]>((done, failed) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => failed(opening.error);
    opening.onsuccess = () => {
      const names = opening.result.transaction('pan-edits').objectStore('pan-edits').getAllKeys();
      names.onsuccess = () => done(names.result);
    };
  });

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
