// What a kill or a flat battery leaves behind at the worst moment: half a record at the end of Chromium's own log.
// Chromium writes on behind it and, at a later start, takes the half record for damage and deletes the database.
import { appendFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ServedStorePage, serveStorePage } from './build-store-page';
import { startOwnBrowser } from './own-browser';

let served: ServedStorePage;
let profile = '';
beforeAll(async () => {
  profile = mkdtempSync(join(tmpdir(), 'ringwright-torn-log-'));
  served = await serveStorePage();
});
afterAll(async () => {
  await served?.close();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
});

/** One start of the browser with the profile, ended by a kill or as a user ends it. */
async function session<T>(work: (page: Page) => Promise<T>, end: 'kill' | 'close'): Promise<T> {
  const browser = await startOwnBrowser(profile);
  try {
    const page = browser.context.pages()[0];
    if (!page) throw new Error('The browser opened no page.');
    await page.goto(served.address);
    await page.waitForFunction(() => window.storePage !== undefined);
    const value = await work(page);
    await browser[end]();
    return value;
  } finally {
    await browser.kill();
  }
}

const save = (name: string) => (page: Page) =>
  page.evaluate((id) => {
    const { store, samples } = window.storePage;
    return store.keep([samples.sampleEdit(id, id)]);
  }, name);

const look = (page: Page) =>
  page.evaluate(async () => {
    const { store, samples } = window.storePage;
    const pan = await store.pan(samples.samplePan);
    return pan.kind === 'loaded' ? pan.value.edits.map(({ id }): string => id) : pan.trouble;
  });

/** Writes the beginning of a record, 100 of 400 bytes, to the end of the newest log (LevelDB's log format). */
function tearLog(): void {
  const databases = join(profile, 'Default', 'IndexedDB');
  const folder = readdirSync(databases).find((name) => name.endsWith('.leveldb'));
  const logs = folder
    ? readdirSync(join(databases, folder)).filter((name) => /^\d+\.log$/.test(name))
    : [];
  const newest = logs.sort().at(-1);
  if (!folder || !newest) {
    throw new Error(
      'Chromium keeps no such log any more: this test and renewLog have to be thought over.',
    );
  }
  const half = Buffer.alloc(7 + 100);
  half.writeUInt32LE(0x12345678, 0);
  half.writeUInt16LE(400, 4);
  half.writeUInt8(1, 6);
  appendFileSync(join(databases, folder, newest), half);
}

test('half a record at the end of the browser’s log takes nothing with it, now or later', async () => {
  expect(await session(save('before'), 'kill')).toEqual({ kind: 'kept' });
  tearLog();
  expect(await session(save('after'), 'close')).toEqual({ kind: 'kept' });
  expect(await session(look, 'close')).toEqual(['after', 'before']);
  // Once more: the browser found nothing wrong that it would make good now.
  expect(await session(save('later'), 'close')).toEqual({ kind: 'kept' });
  expect(await session(look, 'close')).toEqual(['after', 'before', 'later']);
});
