// Where and how the app is hosted: beside other pages, behind headers of all kinds, and never inside another page.
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { listenOn } from '../../src/command-line/static-server.mjs';
import { distFolder } from '../build/built-files';
import { type BadNetwork, startBadNetwork } from './bad-network';
import { type OpenedApp, openApp } from './open-app';

/** Runs in the page before the app: the copy on the phone would forbid it. */
function haveNoServiceWorker(): void {
  Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
}

const ready = ({ page }: OpenedApp) => page.locator('[data-offline="ready"]').waitFor();

describe('a host', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-host-'));
  let network: BadNetwork;
  let app: OpenedApp | null = null;
  beforeAll(() => {
    cpSync(distFolder, folder, { recursive: true });
    writeFileSync(join(folder, 'gigs.html'), '<h1>Where we play</h1>');
    // Folders without a page of their own are the host's business as well.
    writeFileSync(join(folder, 'gigs'), 'a list of gigs');
  });
  beforeEach(async () => {
    network = await startBadNetwork({ directory: folder, other: folder });
  });
  afterEach(async () => {
    await app?.close();
    app = null;
    await network.close();
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it('that has the app at its root keeps its own pages', async () => {
    app = await openApp('#/', { address: network.address });
    await ready(app);
    const { page, address } = app;
    for (const [path, text] of [
      ['gigs.html', 'Where we play'],
      ['nowhere.html', 'Not found'],
    ]) {
      await page.goto(`${address}${path}`);
      await page.getByText(text ?? '').waitFor();
    }
    // The app's own addresses are still answered from the phone.
    await network.close();
    for (const path of ['', 'index.html', '?from=home#/settings']) {
      await page.goto(`${address}${path}`);
      await page.locator('main').waitFor();
    }
  });

  it('that answers with `Vary: *` can be made ready for offline use', async () => {
    network.addHeaders({ Vary: '*' });
    app = await openApp('#/', { address: network.address });
    await ready(app);
    await network.close();
    await app.page.reload();
    await ready(app);
  });
});

/** What the host gave, without any word on who may show it. */
async function fetchBare(route: Route) {
  const answer = await route.fetch();
  return { body: await answer.body(), headers: { 'Content-Type': 'text/html; charset=utf-8' } };
}

describe('another page', () => {
  const outer = createServer((request, response) => {
    const address = new URL(request.url ?? '/', 'http://localhost').searchParams.get('of') ?? '';
    response.setHeader('Content-Type', 'text/html');
    response.end(`<h1>Another page</h1><iframe src="${address}"></iframe>`);
  });
  let outside = '';
  beforeAll(async () => {
    outside = `http://localhost:${await listenOn(outer, 0, 'localhost')}/`;
  });
  afterAll(() => {
    outer.closeAllConnections();
    outer.close();
  });

  it('shows nothing of the app inside itself where the host forbids it', async () => {
    const app = await openApp('#/');
    try {
      await app.page.goto(`${outside}?of=${encodeURIComponent(app.address)}`);
      await app.page.waitForTimeout(1000);
      expect(await app.page.frameLocator('iframe').locator('main').count()).toBe(0);
    } finally {
      await app.close();
    }
  });

  it('shows nothing of the copy on the phone inside itself either', async () => {
    const app = await openApp('#/');
    try {
      await ready(app);
      const header = await app.page.evaluate(async () =>
        (await fetch('index.html')).headers.get('Content-Security-Policy'),
      );
      expect(header).toBe("frame-ancestors 'none'");
      await app.stopServer();
      await app.page.goto(`${outside}?of=${encodeURIComponent(app.address)}`);
      await app.page.waitForTimeout(1000);
      expect(await app.page.frameLocator('iframe').locator('main').count()).toBe(0);
    } finally {
      await app.close();
    }
  });

  it('gets a sentence instead of the app where the host forbids nothing', async () => {
    const app = await openApp('#/', { beforeApp: haveNoServiceWorker });
    try {
      await app.context.route(app.address, async (route) => {
        const { body, headers } = await fetchBare(route);
        await route.fulfill({ body, headers });
      });
      const page = await app.context.newPage();
      await page.goto(`${outside}?of=${encodeURIComponent(app.address)}`);
      const inside = page.frameLocator('iframe');
      await inside.getByText('Ringwright does not run inside another page.').waitFor();
      expect(await inside.getByRole('link', { name: 'Listen' }).count()).toBe(0);
    } finally {
      await app.close();
    }
  });
});
