// Kills the browser in the middle of continuous saving, again and again, and counts what is missing afterwards.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { serveStorePage } from './build-store-page';
import { startOwnBrowser } from './own-browser';
import type { Found } from './store-page/save-forever';

export interface Killing {
  /** Savings that the store had said were on disk, before each kill. */
  readonly acknowledged: readonly number[];
  /** What was found after each kill, and once more after the last one. */
  readonly found: readonly Found[];
  readonly foundAtTheEnd: readonly Found[];
}

/** Kills `kills` times, each at another moment (seeded) after the saving has begun; `tell` hears what each start found. */
export async function killWhileSaving(
  kills: number,
  seed: number,
  tell: (found: readonly Found[]) => void = () => undefined,
): Promise<Killing> {
  const random = seededRandom(seed);
  const profile = mkdtempSync(join(tmpdir(), 'ringwright-kills-'));
  const served = await serveStorePage();
  const acknowledged: number[] = [];
  const found: Found[] = [];
  try {
    for (let cycle = 0; cycle < kills; cycle += 1) {
      const browser = await startOwnBrowser(profile);
      try {
        const page = await openPage(browser.context.pages()[0], served.address);
        if (cycle > 0) {
          found.push(await check(page, cycle - 1, acknowledged[cycle - 1] ?? 0));
          tell(found);
        }
        let last = 0;
        const begun = new Promise<void>((done) => {
          void page
            .exposeFunction('acknowledge', (saved: number) => {
              last = Math.max(last, saved);
              done();
            })
            .then(() => page.evaluate((n) => window.storePage.saveForever(n), cycle))
            // The kill ends it.
            .catch(() => undefined);
        });
        await begun;
        await pause(20 + 300 * random());
        await browser.kill();
        acknowledged.push(last);
      } finally {
        await browser.kill();
      }
    }
    const browser = await startOwnBrowser(profile);
    try {
      const page = await openPage(browser.context.pages()[0], served.address);
      const foundAtTheEnd: Found[] = [];
      for (const [cycle, count] of acknowledged.entries()) {
        foundAtTheEnd.push(await check(page, cycle, count));
      }
      found.push(...foundAtTheEnd.slice(-1));
      return { acknowledged, found, foundAtTheEnd };
    } finally {
      await browser.kill();
    }
  } finally {
    await served.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function openPage(page: Page | undefined, address: string): Promise<Page> {
  if (!page) throw new Error('The browser opened no page.');
  await page.goto(address);
  await page.waitForFunction(() => window.storePage !== undefined);
  return page;
}

const check = (page: Page, cycle: number, count: number): Promise<Found> =>
  page.evaluate(([at, saved]) => window.storePage.checkSaved(at, saved), [cycle, count] as const);
