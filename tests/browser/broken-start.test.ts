// A version that is broken all the same: the next start notices, says so without a script, and gets another copy.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { distFolder, precachedIn } from '../build/built-files';
import { type BadNetwork, startBadNetwork } from './bad-network';
import { buildBrokenVersion } from './next-version';
import { type OpenedApp, openApp } from './open-app';

/** The built file of that name, whatever its hash is. */
function built(name: RegExp): string {
  const path = precachedIn(distFolder).find((each) => name.test(each));
  if (path === undefined) throw new Error(`The build has no ${name}`);
  return path;
}

/** In the page: the kept file becomes something else. */
async function spoilKept(path: string): Promise<void> {
  const [cacheName = ''] = await caches.keys();
  const cache = await caches.open(cacheName);
  const address = new URL(path, location.href).href;
  if (!(await cache.match(address))) throw new Error(`${path} is not in the copy`);
  await cache.put(address, new Response('<p>Accept our terms to go on.</p>'));
}

/** In the page: a new version is asked for, as the browser does by itself now and then. */
async function askForUpdate(): Promise<void> {
  await (await navigator.serviceWorker.getRegistration())?.update();
}

const open = (page: Page) => page.getByRole('link', { name: 'Open the app' }).click();

describe('a copy that is broken', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-broken-'));
  let network: BadNetwork;
  let app: OpenedApp;
  beforeAll(() => buildBrokenVersion(folder));
  beforeEach(async () => {
    network = await startBadNetwork({ directory: distFolder, other: distFolder });
    app = await openApp('#/', { address: network.address });
    await app.page.locator('[data-offline="ready"]').waitFor();
  });
  afterEach(async () => {
    await app.close();
    await network.close();
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each([/^assets\/index-.*\.js$/, /^index\.html$/])(
    'in %s says so without a network, and is right again after two taps with one',
    async (name) => {
      const { page } = app;
      const path = built(name);
      await page.evaluate(spoilKept, path);
      network.spoil(path, 'status 500');
      await page.reload();
      await page.getByText('Do not clear the data of this app').waitFor();
      network.spoil(null);
      await page.getByRole('link', { name: /fetch (?:the app|it) again/i }).click();
      await page.getByText('1 file of the app’s copy on this phone was broken').waitFor();
      await open(page);
      await page.locator('[data-offline="ready"]').waitFor();
    },
  );

  it('and cannot be fetched again says how much is missing, and stays out of the way', async () => {
    const { page } = app;
    const path = built(/settings-screen-.*\.js$/);
    await page.evaluate(spoilKept, path);
    network.spoil(path, 'portal');
    await page.goto(`${app.address}?mend`);
    await page.getByText('1 file of the app’s copy on this phone could not be fetched').waitFor();
    await page.getByRole('link', { name: 'open the app as it is' }).click();
    await page.locator('main').waitFor();
    expect(await page.locator('[data-offline="ready"]').count()).toBe(0);
  });

  it('because its makers broke it gives way to the next version by itself', async () => {
    const { page } = app;
    network.serve(folder);
    await page.evaluate(askForUpdate);
    await page.getByRole('button', { name: 'Update now' }).click();
    // It does not start: its own words come.
    await page.getByText('If nothing else comes within some seconds').waitFor();
    network.serve(distFolder);
    await page.reload();
    await page.locator('[data-offline="ready"]').waitFor();
    expect(await page.locator('main').count()).toBe(1);
  });
});
