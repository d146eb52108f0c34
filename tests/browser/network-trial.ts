// One wrong file, at the first visit or at an update: what the window shows meanwhile, and once the network is right.
import type { BrowserContext, Page } from 'playwright-core';
import { type BadNetwork, type Fault, faults } from './bad-network';
import { brokenScreens } from './every-screen';

export interface Trial {
  readonly path: string;
  readonly fault: Fault;
  readonly when: 'first visit' | 'update';
}

/** What went wrong in a trial, in words; nothing if all was well. */
export type Troubles = readonly string[];

export interface Versions {
  readonly first: string;
  readonly next: string;
}

/** How long the app has for what it does by itself, ms: its own patience at the start is 10 s. */
const longest = 30_000;

export async function tryFirstVisit(
  context: BrowserContext,
  network: BadNetwork,
  versions: Versions,
  { path, fault }: Trial,
): Promise<Troubles> {
  const troubles: string[] = [];
  network.serve(versions.first);
  network.spoil(path, fault);
  const page = await context.newPage();
  await page.goto(network.address).catch(() => undefined);
  await settled(page);
  // The browser has only half a page, or a page that is not the app's: it is for the browser to say so.
  if (path !== 'index.html' && (await isBlank(page))) troubles.push('blank');
  // Without a service worker that holds all files, nothing may be promised.
  if (await isReady(page)) troubles.push('falsely ready');
  network.spoil(null);
  await page.reload();
  troubles.push(...(await troublesOfWhole(page, 'first')));
  await page.close();
  return troubles;
}

export async function tryUpdate(
  context: BrowserContext,
  network: BadNetwork,
  versions: Versions,
  { path, fault }: Trial,
): Promise<Troubles> {
  const troubles: string[] = [];
  network.spoil(null);
  network.serve(versions.first);
  const page = await context.newPage();
  await page.goto(network.address);
  await page.locator('[data-offline="ready"]').waitFor({ timeout: longest });
  network.serve(versions.next);
  network.spoil(path, fault);
  await page.reload();
  await page.locator('main').waitFor({ timeout: longest });
  await updateTried(page);
  const isOffered = await page.locator('[data-offline="update-waiting"]').count();
  const says = await page.locator('[data-network="wrong"]').count();
  if (isOffered > 0) troubles.push('offered all the same');
  else if (says === 0) troubles.push('nothing said');
  troubles.push(...(await troublesOfWhole(page, 'first')).map((each) => `meanwhile ${each}`));
  network.spoil(null);
  await page.reload();
  await page.getByRole('button', { name: 'Update now' }).click({ timeout: longest });
  await page.locator('html[data-version="next"]').waitFor({ timeout: longest });
  troubles.push(...(await troublesOfWhole(page, 'next')));
  await page.close();
  return troubles;
}

/** In one version, whole, ready, and every screen there. */
async function troublesOfWhole(page: Page, version: 'first' | 'next'): Promise<Troubles> {
  const isShown = await comes(page, 'main');
  if (!isShown) return [(await isBlank(page)) ? 'blank for good' : 'no first screen'];
  const troubles: string[] = [];
  if (!(await comes(page, '[data-offline="ready"]'))) troubles.push('not ready');
  const shown = await page.evaluate(() => document.documentElement.dataset['version'] ?? 'first');
  if (shown !== version) troubles.push(`shows ${shown}`);
  const broken = await brokenScreens(page);
  return [...troubles, ...broken.map((screen) => `${screen} is broken`)];
}

const comes = (page: Page, what: string): Promise<boolean> =>
  page
    .locator(what)
    .first()
    .waitFor({ timeout: longest })
    .then(
      () => true,
      () => false,
    );

/** The first screen is there and the worker was tried, or neither will come. */
async function settled(page: Page): Promise<void> {
  const said = page.locator('[data-network="wrong"], [data-offline="unsupported"]').first();
  await said.waitFor({ timeout: 3000 }).catch(() => undefined);
  // Without the first screen its own words come, after some seconds.
  if (await isBlank(page)) await page.waitForTimeout(5000);
}

async function updateTried(page: Page): Promise<void> {
  await page
    .locator('[data-network="wrong"], [data-offline="update-waiting"]')
    .first()
    .waitFor({ timeout: longest })
    .catch(() => undefined);
}

/** Nothing to be read: words that are hidden for the moment do not count. */
const isBlank = async (page: Page): Promise<boolean> =>
  (await page.getByText(/\S/).filter({ visible: true }).count()) === 0;

const isReady = async (page: Page): Promise<boolean> =>
  (await page.locator('[data-offline="ready"]').count()) > 0;

export const allTrials = (paths: readonly string[], when: Trial['when']): readonly Trial[] =>
  paths.flatMap((path) => faults.map((fault) => ({ path, fault, when })));
