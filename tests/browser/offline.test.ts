// What the first screen says of the copy that works without a network.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenedApp, openApp } from './open-app';

describe('ready for offline use', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp('#/', {
      basePath: '/some/folder/',
      beforeApp: recordOfflineState,
      ownBrowser: true,
    });
    await app.page.locator('[data-offline="ready"]').waitFor();
  });
  afterAll(() => app.close());

  it.each(['assets/index-', 'assets/analysis.worker-', 'assets/practice-screen-', 'index.html'])(
    'is taken back when %s is missing in the copy, and said again when it is back',
    async (name) => {
      const taken = await app.page.evaluate(takeOutOfCopy, name);
      expect(taken).toContain(name);
      expect(await offlineStatesAfterReload(app, 3000)).toEqual(['not-ready']);
      expect(await app.page.locator('.offline').textContent()).not.toContain('Ready');
      await app.page.evaluate(putBack, taken);
      expect(await offlineStatesAfterReload(app, 30_000)).toEqual(['not-ready', 'ready']);
    },
  );
});

declare global {
  interface Window {
    offlineStates?: string[];
  }
}

/** Runs in the page before the app: every different state that the first screen has shown. */
function recordOfflineState(): void {
  const states: string[] = [];
  window.offlineStates = states;
  new MutationObserver(() => {
    const state = document.querySelector<HTMLElement>('[data-offline]')?.dataset['offline'];
    if (state !== undefined && state !== states.at(-1)) states.push(state);
  }).observe(document, { subtree: true, childList: true, attributes: true });
}

/** In the page: deletes the first kept file whose address holds `name`; returns its address. */
async function takeOutOfCopy(name: string): Promise<string> {
  const [cacheName = ''] = await caches.keys();
  const cache = await caches.open(cacheName);
  const request = (await cache.keys()).find(({ url }) => url.includes(name));
  if (!request) throw new Error(`${name} is not in the copy`);
  await cache.delete(request);
  return request.url;
}

/** In the page: fetches a file that was taken out and keeps it under the very same address. */
async function putBack(address: string): Promise<void> {
  const [cacheName = ''] = await caches.keys();
  await (await caches.open(cacheName)).put(address, await fetch(address));
}

/** Reloads; resolves to what the page has said until it said "ready", or for so long (ms) without. */
async function offlineStatesAfterReload(
  { page }: OpenedApp,
  timeout: number,
): Promise<readonly string[]> {
  await page.reload();
  await page.locator('main').waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready);
  // "Ready" comes within a few hundredths of a second; its absence can only be waited for.
  await page
    .locator('[data-offline="ready"]')
    .waitFor({ timeout })
    .catch(() => undefined);
  return page.evaluate(() => window.offlineStates ?? []);
}
