// A new version: offered, never put in place while something is measured, and in place after one tap.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { distFolder } from '../build/built-files';
import { buildNextVersion } from './next-version';
import { type OpenedApp, openApp } from './open-app';
import { sixStrikes } from './six-strikes';

/** They begin late, so that the update arrives before. */
const sound = sixStrikes(2.5);

const versionOf = ({ page }: OpenedApp) =>
  page.evaluate(() => document.documentElement.dataset['version'] ?? 'first');

/** In the page: what the browser does by itself now and then; resolves once the new version waits. */
async function askForUpdate(): Promise<void> {
  const registration = await navigator.serviceWorker.getRegistration();
  if (!registration) throw new Error('no service worker');
  await registration.update();
  while (!registration.waiting) await new Promise((done) => setTimeout(done, 50));
}

const someoneWaits = ({ page }: OpenedApp) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return registration?.waiting != null;
  });

describe('a new version', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-versions-'));
  const served = join(folder, 'served');
  const next = join(folder, 'next');
  let app: OpenedApp;
  let other: Page;

  beforeAll(async () => {
    cpSync(distFolder, served, { recursive: true });
    await buildNextVersion(next);
    app = await openApp('#/', { directory: served, sound });
    await app.page.locator('[data-offline="ready"]').waitFor();
    // A host that was given the next version: the files of the first are gone.
    rmSync(served, { recursive: true });
    cpSync(next, served, { recursive: true });
  });
  afterAll(async () => {
    await app.close();
    rmSync(folder, { recursive: true });
  });

  it('that arrives while listening changes nothing: the strikes settle, nothing is offered there', async () => {
    await app.page.getByRole('link', { name: 'Listen' }).click();
    await app.page.locator('[data-microphone="listening"]').waitFor();
    await app.page.evaluate(() => document.body.setAttribute('data-same-page', ''));
    await app.page.evaluate(askForUpdate);
    await app.page.locator('#readout[data-state="settled"]').waitFor();
    expect(await app.page.getByRole('button', { name: 'Update now' }).count()).toBe(0);
    expect(await app.page.locator('body[data-same-page]').count()).toBe(1);
    expect(await versionOf(app)).toBe('first');
    expect(await someoneWaits(app)).toBe(true);
  });

  it('is offered on the first screen, where it still waits for a tap', async () => {
    await app.page.getByRole('link', { name: 'Back' }).click();
    await app.page.getByText('A new version is ready.').waitFor();
    await app.page.getByRole('button', { name: 'Update now' }).waitFor();
    expect(await app.page.locator('body[data-same-page]').count()).toBe(1);
    expect(await someoneWaits(app)).toBe(true);
  });

  it('is still offered, and still not in place, after a reload', async () => {
    await app.page.reload();
    await app.page.getByRole('button', { name: 'Update now' }).waitFor();
    expect(await versionOf(app)).toBe('first');
  });

  it('is not put in place while another window listens, and says so', async () => {
    other = await app.context.newPage();
    await other.goto(`${app.address}#/listen`);
    await other.getByRole('button', { name: 'Listen' }).click();
    await other.locator('[data-microphone="listening"]').waitFor();
    await app.page.bringToFront();
    await app.page.getByRole('button', { name: 'Update now' }).click();
    await app.page.getByText('when nothing is being measured').waitFor();
    expect(await versionOf(app)).toBe('first');
    expect(await someoneWaits(app)).toBe(true);
    await other.getByRole('button', { name: 'Stop' }).click();
    await other.getByRole('button', { name: 'Listen' }).waitFor();
  });

  it('runs after the tap, is ready for offline use, and leaves another window as it is', async () => {
    await app.page.getByRole('button', { name: 'Update now' }).click();
    await app.page.locator('html[data-version="next"]').waitFor();
    await app.page.locator('[data-offline="ready"]').waitFor();
    expect(await someoneWaits(app)).toBe(false);
    await other.bringToFront();
    await other.getByRole('button', { name: 'Listen' }).click();
    await other.locator('[data-microphone="listening"]').waitFor();
    expect(await other.locator('html[data-version="next"]').count()).toBe(0);
    await other.close();
  });

  it('is the one that starts without a server', async () => {
    await app.stopServer();
    await app.page.reload();
    await app.page.locator('html[data-version="next"]').waitFor();
    await app.page.locator('[data-offline="ready"]').waitFor();
    await app.page.getByRole('link', { name: 'Practice pan' }).click();
    await app.page.getByRole('button', { name: 'Strike D4' }).waitFor();
  });

  it('brings no error', () => {
    const expected = /ERR_CONNECTION_REFUSED/;
    expect(app.problems.filter((problem) => !expected.test(problem))).toEqual([]);
  });
});
