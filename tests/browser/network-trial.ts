// One wrong file, at the first visit or at an update: what the window shows meanwhile, and once the network is right.
import { type BadNetwork, type Fault, faults } from './bad-network';
import { everyScreen, openEach } from './every-screen';

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

/** A window of any browser. */
export interface TrialPage {
  open(address: string): Promise<void>;
  /** The value of an expression in the page; a promise is waited for. */
  evaluate(expression: string): Promise<unknown>;
}

/** How long the app has for what it does by itself, ms: its own patience at the start is 10 s. */
const longest = 40_000;
const ready = '[data-offline="ready"]';
const wrong = '[data-network="wrong"]';
const offered = '[data-offline="update-waiting"]';

export async function tryFirstVisit(
  page: TrialPage,
  network: BadNetwork,
  versions: Versions,
  { path, fault }: Trial,
): Promise<Troubles> {
  const troubles: string[] = [];
  network.serve(versions.first);
  network.spoil(path, fault);
  await open(page, network);
  await comes(page, `${wrong}, [data-offline="unsupported"]`, 3000);
  // Without the first screen its own words come, after some seconds.
  if (await isBlank(page)) await later(5000);
  // The browser has only half a page, or a page that is not the app's: it is for the browser to say so.
  if (path !== 'index.html' && (await isBlank(page))) troubles.push('blank');
  // Without a service worker that holds all files, nothing may be promised.
  if (await isThere(page, ready)) troubles.push('falsely ready');
  network.spoil(null);
  await open(page, network);
  return [...troubles, ...(await troublesOfWhole(page, 'first'))];
}

export async function tryUpdate(
  page: TrialPage,
  network: BadNetwork,
  versions: Versions,
  { path, fault }: Trial,
): Promise<Troubles> {
  const troubles: string[] = [];
  network.serve(versions.first);
  await open(page, network);
  if (!(await comes(page, ready))) return ['never ready before the update'];
  network.serve(versions.next);
  network.spoil(path, fault);
  await open(page, network);
  await comes(page, `${wrong}, ${offered}`);
  if (await isThere(page, offered)) troubles.push('offered all the same');
  else if (!(await isThere(page, wrong))) troubles.push('nothing said');
  troubles.push(...(await troublesOfWhole(page, 'first')).map((each) => `meanwhile ${each}`));
  network.spoil(null);
  await open(page, network);
  if (!(await comes(page, offered))) return [...troubles, 'not offered afterwards'];
  await page.evaluate(
    "[...document.querySelectorAll('button')].find((each) => each.textContent === 'Update now').click()",
  );
  if (!(await comes(page, 'html[data-version="next"]'))) troubles.push('not put in place');
  return [...troubles, ...(await troublesOfWhole(page, 'next'))];
}

/** In one version, whole, ready, and every screen there. */
async function troublesOfWhole(page: TrialPage, version: 'first' | 'next'): Promise<Troubles> {
  if (!(await comes(page, 'main'))) {
    return [(await isBlank(page)) ? 'blank for good' : 'no first screen'];
  }
  const troubles: string[] = [];
  if (!(await comes(page, ready))) troubles.push('not ready');
  const shown = await page.evaluate("document.documentElement.dataset.version ?? 'first'");
  if (shown !== version) troubles.push(`shows ${shown}`);
  const broken = await page.evaluate(`(${openEach})(${JSON.stringify(everyScreen)})`);
  if (!Array.isArray(broken)) throw new Error('the screens were not opened');
  return [...troubles, ...broken.map((screen) => `${screen} is broken`)];
}

/** Whatever comes: an answer that breaks off is no error of the trial. */
const open = (page: TrialPage, { address }: BadNetwork): Promise<void> =>
  page.open(address).catch(() => undefined);

const later = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

async function comes(page: TrialPage, what: string, patience = longest): Promise<boolean> {
  const end = performance.now() + patience;
  while (performance.now() < end) {
    if (await isThere(page, what)) return true;
    await later(50);
  }
  return false;
}

/** False too while one page gives way to the next. */
const isThere = (page: TrialPage, what: string): Promise<boolean> =>
  page.evaluate(`document.querySelector(${JSON.stringify(what)}) !== null`).then(
    (found) => found === true,
    () => false,
  );

/** Nothing to be read: words that are hidden for the moment do not count. */
const isBlank = (page: TrialPage): Promise<boolean> =>
  page.evaluate("(document.body?.innerText ?? '').trim() === ''").then(
    (blank) => blank === true,
    () => true,
  );

export const allTrials = (paths: readonly string[], when: Trial['when']): readonly Trial[] =>
  paths.flatMap((path) => faults.map((fault) => ({ path, fault, when })));
