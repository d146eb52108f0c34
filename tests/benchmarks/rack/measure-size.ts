// One rack of a given size: filled, opened again and again by a fresh browser, and sent through a file.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { startOwnBrowser } from '../../browser/own-browser';
import { type PeakMemory, withPeakMemory } from './page-memory';

export interface RackFigures {
  readonly pans: number;
  readonly strikes: number;
  readonly fillSeconds: number;
  /** What the browser says the database takes on the disk. */
  readonly storedBytes: number;
  /** Milliseconds, one a start of the browser. */
  readonly rack: readonly number[];
  readonly pan: readonly number[];
  readonly note: readonly number[];
  readonly exportSeconds: number;
  readonly exportPeak: PeakMemory;
  readonly exportBefore: PeakMemory;
  readonly fileBytes: number;
  readonly checkSeconds: number;
  readonly importSeconds: number;
  readonly importPeak: PeakMemory;
  readonly importBefore: PeakMemory;
}

export interface RackSize {
  readonly pans: number;
  readonly rounds: number;
  readonly strikesPerRound: number;
  /** Starts of the browser; each gives one time of each kind. */
  readonly starts: number;
}

/** `tell` hears the times of opening before the rack is sent through a file. */
export async function measureSize(
  address: string,
  size: RackSize,
  tell: (opening: Pick<RackFigures, 'rack' | 'pan' | 'note'>) => void,
): Promise<RackFigures> {
  const { pans, rounds, starts } = size;
  const profile = mkdtempSync(join(tmpdir(), 'ringwright-rack-'));
  const inBrowser = async <T>(work: (page: Page) => Promise<T>): Promise<T> => {
    const browser = await startOwnBrowser(profile);
    try {
      const page = browser.context.pages()[0];
      if (!page) throw new Error('The browser opened no page.');
      await page.goto(address);
      await page.waitForFunction(() => window.storePage !== undefined);
      const value = await work(page);
      // A killed one would leave work for the next start.
      await browser.close();
      return value;
    } finally {
      await browser.kill();
    }
  };
  try {
    const filled = await inBrowser((page) => fill(page, pans, rounds));
    const rack: number[] = [];
    const pan: number[] = [];
    const note: number[] = [];
    for (let start = 0; start < starts; start += 1) {
      // Other pans at every start: nothing of them has been read before.
      const [onePan, otherPan] = [(7 * start + 3) % pans, (7 * start + 6) % pans];
      await inBrowser(async (page) => {
        rack.push(await page.evaluate((n) => window.storePage.timeRack(n), pans));
        const ask = [onePan, rounds] as const;
        pan.push(await page.evaluate(([n, k]) => window.storePage.timePan(n, k), ask));
        const askNote = [otherPan, rounds] as const;
        note.push(await page.evaluate(([n, k]) => window.storePage.timeNote(n, k), askNote));
      });
    }
    tell({ rack, pan, note });
    const moved = await inBrowser(async (page) => {
      const out = await withPeakMemory(page, () =>
        page.evaluate(() => window.storePage.timeExport()),
      );
      const back = await withPeakMemory(page, () =>
        page.evaluate(() => window.storePage.timeImport()),
      );
      if (back.value.added !== out.value.records) {
        throw new Error(`${out.value.records} records went out, ${back.value.added} came in`);
      }
      return { out, back };
    });
    const { out, back } = moved;
    return {
      pans,
      strikes: pans * rounds * size.strikesPerRound,
      ...filled,
      rack,
      pan,
      note,
      exportSeconds: out.value.milliseconds / 1000,
      exportPeak: out.peak,
      exportBefore: out.before,
      fileBytes: out.value.bytes,
      checkSeconds: back.value.checked / 1000,
      importSeconds: back.value.takenIn / 1000,
      importPeak: back.peak,
      importBefore: back.before,
    };
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function fill(page: Page, pans: number, rounds: number) {
  const begun = performance.now();
  for (let pan = 0; pan < pans; pan += 1) {
    await page.evaluate(([n, k]) => window.storePage.fillPan(n, k), [pan, rounds] as const);
  }
  const fillSeconds = (performance.now() - begun) / 1000;
  const { usedBytes } = await page.evaluate(() => window.storePage.health.look());
  return { fillSeconds, storedBytes: usedBytes ?? Number.NaN };
}
