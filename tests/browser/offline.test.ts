// What the first screen says of the copy that works without a network.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { distFolder } from '../build/built-files';
import { type BadNetwork, startBadNetwork } from './bad-network';
import { type OpenedApp, openApp } from './open-app';

describe('ready for offline use', () => {
  let app: OpenedApp;
  let network: BadNetwork;
  beforeAll(async () => {
    network = await startBadNetwork({
      directory: distFolder,
      other: distFolder,
      basePath: '/some/folder/',
    });
    app = await openApp('#/', {
      address: network.address,
      beforeApp: recordOfflineState,
      ownBrowser: true,
    });
    await app.page.locator('[data-offline="ready"]').waitFor();
  });
  afterAll(async () => {
    await app.close();
    await network.close();
  });

  it.each(['assets/analysis.worker-', 'assets/practice-screen-'])(
    'is taken back when %s is gone from the copy and there is no network',
    async (name) => {
      const taken = await app.page.evaluate(takeOutOfCopy, name);
      network.spoil(taken, 'status 500');
      expect(await offlineStatesAfterReload(app, 3000)).toEqual(['not-ready']);
      expect(await app.page.locator('.offline').textContent()).not.toContain('Ready');
      network.spoil(null);
      expect(await offlineStatesAfterReload(app, 30_000)).toEqual(['not-ready', 'ready']);
    },
  );

  it.each([
    'assets/index-',
    'assets/analysis.worker-',
    'assets/capture.worklet-',
    'assets/practice-screen-',
    'assets/barlow-latin-500',
    'index.html',
    'silence.wav',
  ])('is true again after a start when %s was wrong in the copy', async (name) => {
    await app.page.evaluate(makeWrongInCopy, name);
    expect((await offlineStatesAfterReload(app, 30_000)).at(-1)).toBe('ready');
    expect(await app.page.evaluate(isWrongInCopy, name)).toBe(false);
  });
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

/** In the page: deletes the first kept file whose address holds `name`; returns its path below the app's folder. */
async function takeOutOfCopy(name: string): Promise<string> {
  const [cacheName = ''] = await caches.keys();
  const cache = await caches.open(cacheName);
  const request = (await cache.keys()).find(({ url }) => url.includes(name));
  if (!request) throw new Error(`${name} is not in the copy`);
  await cache.delete(request);
  return request.url.slice(new URL('./', location.href).href.length);
}

/** In the page: what a portal might have left there. */
async function makeWrongInCopy(name: string): Promise<void> {
  const [cacheName = ''] = await caches.keys();
  const cache = await caches.open(cacheName);
  const request = (await cache.keys()).find(({ url }) => url.includes(name));
  if (!request) throw new Error(`${name} is not in the copy`);
  const headers = (await cache.match(request))?.headers ?? new Headers();
  await cache.put(request, new Response('<p>Accept our terms to go on.</p>', { headers }));
}

async function isWrongInCopy(name: string): Promise<boolean> {
  const [cacheName = ''] = await caches.keys();
  const cache = await caches.open(cacheName);
  const request = (await cache.keys()).find(({ url }) => url.includes(name));
  const text = await (request && (await cache.match(request)))?.text();
  return text?.includes('Accept our terms') ?? true;
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
