// Opens one screen after the other in a window and names those that do not come.
import type { Page } from 'playwright-core';

/** Addresses that together load every late part of the app. "pan-1" with a round "round-1" is seeded, or not there. */
export const everyScreen: readonly string[] = [
  '#/practice',
  '#/practice-bench',
  '#/settings',
  '#/inside',
  '#/add-pan',
  '#/backup',
  '#/cautions',
  '#/dropped',
  '#/receive',
  '#/visit',
  '#/bench/74',
  '#/pan/pan-1',
  ...[
    'details',
    'layout',
    'begin',
    'history',
    'send',
    'knock',
    'tonight',
    'sheet',
    'tuned',
    'answers',
  ].map((screen) => `#/pan/pan-1/${screen}`),
  '#/pan/pan-1/round/round-1',
  '#/pan/pan-1/result/round-1',
  '#/pan/pan-1/note/74',
  '#/pan/pan-1/bench/74',
  '#/',
];

/** Addresses of screens that were not there in time, or said that they could not be loaded. */
export const brokenScreens = (page: Page): Promise<readonly string[]> =>
  page.evaluate(openEach, everyScreen);

/** In the page: opens one address after the other; resolves to those that did not come. */
export async function openEach(addresses: readonly string[]): Promise<readonly string[]> {
  const later = (ms: number) => new Promise((done) => setTimeout(done, ms));
  const comes = async (): Promise<boolean> => {
    for (let waited = 0; waited < 10_000; waited += 20) {
      const text = document.body.textContent;
      if (text.includes('could not be loaded')) return false;
      if (document.querySelector('main') && text.trim() !== '') return true;
      await later(20);
    }
    return false;
  };
  const broken: string[] = [];
  for (const address of addresses) {
    if (location.hash !== address) {
      const turned = new Promise((done) => {
        window.addEventListener('hashchange', done, { once: true });
      });
      location.hash = address;
      await turned;
    }
    // The screen before is gone by the next frame: an empty page lies between the late ones.
    await later(20);
    if (!(await comes())) broken.push(address);
  }
  return broken;
}
