// An update that is taken in one window, while another one is open.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { distFolder, precachedIn } from '../build/built-files';
import { type BadNetwork, startBadNetwork } from './bad-network';
import { brokenScreens, everyScreen } from './every-screen';
import { buildOtherVersion } from './next-version';
import type { OpenedApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

describe('an update in one of two windows', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-windows-'));
  let network: BadNetwork;
  let app: OpenedApp;
  beforeAll(async () => {
    await buildOtherVersion(folder);
    network = await startBadNetwork({ directory: distFolder, other: distFolder });
    app = await openWithRecords(
      '#/',
      { records: panWith({}, [{}]) },
      { address: network.address, withOfflineCopy: true },
    );
    await app.page.locator('[data-offline="ready"]').waitFor();
  });
  afterAll(async () => {
    await app.close();
    await network.close();
    rmSync(folder, { recursive: true });
  });

  const copies = () =>
    app.page.evaluate(async () =>
      (await caches.keys()).filter((name) => name.startsWith('ringwright-copy')),
    );

  it('leaves every screen of the other one whole, on a host that has only the new files', async () => {
    const late = precachedIn(distFolder).filter((path) => path.endsWith('.js'));
    const kept = new Set(precachedIn(folder));
    // Otherwise this would test nothing: nearly all scripts have other names in the new version.
    expect(late.filter((path) => !kept.has(path)).length).toBeGreaterThan(0.7 * late.length);
    const other = await app.context.newPage();
    await other.goto(app.address);
    await other.locator('main').waitFor();
    network.serve(folder);
    await app.page.bringToFront();
    await app.page.reload();
    await app.page.getByRole('button', { name: 'Update now' }).click();
    await app.page.locator('html[data-version="next"]').waitFor();
    await app.page.locator('[data-offline="ready"]').waitFor();
    expect(await other.locator('html[data-version="next"]').count()).toBe(0);
    expect(everyScreen.length).toBeGreaterThanOrEqual(25);
    expect(await brokenScreens(other)).toEqual([]);
    expect(await other.locator('html[data-version="next"]').count()).toBe(0);
    expect(await brokenScreens(app.page)).toEqual([]);
    expect(await copies()).toHaveLength(2);
    // It is offered the same version, and comes to it without another one waiting.
    await other.getByRole('button', { name: 'Update now' }).click();
    await other.locator('html[data-version="next"]').waitFor();
    await other.locator('[data-offline="ready"]').waitFor();
    await other.close();
  });

  it('keeps the old files no longer than some window needs them', async () => {
    await app.page.reload();
    await app.page.locator('[data-offline="ready"]').waitFor();
    await expect.poll(async () => (await copies()).length).toBe(1);
    expect(await brokenScreens(app.page)).toEqual([]);
  });
});
