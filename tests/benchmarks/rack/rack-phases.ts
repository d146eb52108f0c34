// The phases of the benchmark of the rack, each in a browser of its own: fill it, open it again and again, write it
// to a file, take the file in.
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { startOwnBrowser } from '../../browser/own-browser';
import { withPeakMemory } from './page-memory';
import { machineLoad, type Phase, type RackFigures, type RackFolder } from './rack-figures';
import { type AppTimes, timeApp } from './time-app';
import { untilTidy } from './until-tidy';

export interface RackTask {
  readonly address: string;
  /** The app at the same origin. */
  readonly appAddress: string;
  readonly folder: RackFolder;
  readonly pans: number;
  readonly rounds: number;
  /** Starts of the browser; each gives one time of each kind. */
  readonly starts: number;
  /** Seconds after which filling stops, to go on in another run. */
  readonly longest: number;
}

export const runPhase: Readonly<Record<Phase, (task: RackTask) => Promise<RackFigures>>> = {
  fill,
  open,
  export: exportAll,
  import: importAll,
};

async function inBrowser<T>(
  { address, folder }: RackTask,
  work: (page: Page) => Promise<T>,
): Promise<T> {
  const browser = await startOwnBrowser(folder.profile);
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
}

/** Goes on where an earlier run stopped. */
async function fill(task: RackTask): Promise<RackFigures> {
  const before = task.folder.figures.filled;
  const begun = performance.now();
  const secondsSoFar = () => (performance.now() - begun) / 1000;
  return inBrowser(task, async (page) => {
    let pans = before?.pans ?? 0;
    for (; pans < task.pans && secondsSoFar() < task.longest; pans += 1) {
      await page.evaluate(([n, k]) => window.storePage.fillPan(n, k), [pans, task.rounds] as const);
    }
    const seconds = (before?.seconds ?? 0) + secondsSoFar();
    const { usedBytes } = await page.evaluate(() => window.storePage.health.look());
    return { filled: { pans, seconds, storedBytes: usedBytes ?? Number.NaN } };
  });
}

/** Two sessions as long as real ones: one that writes, and so begins a new log, and one that only looks. */
async function tidy(task: RackTask): Promise<void> {
  for (const writes of [true, false]) {
    await inBrowser(task, async (page) => {
      if (writes) await page.evaluate(() => window.storePage.store.keep([]));
      // Also reading makes the database merge what it has to look through too often.
      await page.evaluate((n) => window.storePage.timeRack(n), task.pans);
      await untilTidy(task.folder.profile);
    });
  }
}

async function open(task: RackTask): Promise<RackFigures> {
  const { pans, rounds, starts } = task;
  await firstVisit(task);
  await tidy(task);
  const copy: number[] = [];
  const rack: number[] = [];
  const pan: number[] = [];
  const note: number[] = [];
  for (let start = 0; start < starts; start += 1) {
    // Other pans at every start: nothing of them has been read before.
    const [onePan, otherPan] = [(7 * start + 3) % pans, (7 * start + 6) % pans];
    await inBrowser(task, async (page) => {
      copy.push(await page.evaluate((n) => window.storePage.timeCopy(n), pans));
      rack.push(await page.evaluate((n) => window.storePage.timeRack(n), pans));
      const ask = [onePan, rounds] as const;
      pan.push(await page.evaluate(([n, k]) => window.storePage.timePan(n, k), ask));
      const askNote = [otherPan, rounds] as const;
      note.push(await page.evaluate(([n, k]) => window.storePage.timeNote(n, k), askNote));
    });
  }
  return { opened: { copy, rack, pan, note, app: await timesOfApp(task), load: machineLoad() } };
}

/** The app for the first time: it gets its offline copy, judges all pans by its settings and keeps the cards. */
async function firstVisit({ folder, appAddress, pans }: RackTask): Promise<void> {
  // An offline copy of an earlier run would be shown instead of this build.
  rmSync(join(folder.profile, 'Default', 'Service Worker'), { recursive: true, force: true });
  await timeApp(folder.profile, appAddress, pans, (page) =>
    page.waitForFunction(
      () =>
        navigator.serviceWorker.controller !== null &&
        document.querySelector('.pan-list') !== null &&
        document.querySelector('[aria-busy]') === null,
      undefined,
      { timeout: 0 },
    ),
  );
}

async function timesOfApp({ folder, appAddress, pans, starts }: RackTask): Promise<AppTimes[]> {
  const times: AppTimes[] = [];
  for (let start = 0; start < starts; start += 1) {
    times.push(await timeApp(folder.profile, appAddress, pans));
  }
  return times;
}

async function exportAll(task: RackTask): Promise<RackFigures> {
  return inBrowser(task, async (page) => {
    const { value, peak, before } = await withPeakMemory(page, () =>
      page.evaluate(() => window.storePage.timeExport()),
    );
    await page.evaluate(() => window.storePage.putExportAside());
    const { milliseconds, records, bytes } = value;
    return {
      exported: { seconds: milliseconds / 1000, records, fileBytes: bytes, peak, before },
    };
  });
}

async function importAll(task: RackTask): Promise<RackFigures> {
  const records = task.folder.figures.exported?.records;
  return inBrowser(task, async (page) => {
    const { value, peak, before } = await withPeakMemory(page, () =>
      page.evaluate(() => window.storePage.timeImport()),
    );
    if (value.added !== records) {
      throw new Error(`${records} records went out, ${value.added} came in`);
    }
    return {
      imported: {
        checkSeconds: value.checked / 1000,
        seconds: value.takenIn / 1000,
        peak,
        before,
      },
    };
  });
}
