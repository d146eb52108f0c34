// The rack through a file and back with the browser's own gzip, files and database.
import { readFileSync } from 'node:fs';
import { gunzipSync, gzipSync } from 'node:zlib';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { quietFlags } from './browser-flags';
import { type ServedStorePage, serveStorePage } from './build-store-page';

let served: ServedStorePage;
let browser: Browser;

beforeAll(async () => {
  const executablePath = process.env['CHROME_PATH'];
  if (!executablePath) throw new Error('CHROME_PATH must name a Chrome or Chromium: use npm test.');
  served = await serveStorePage();
  browser = await chromium.launch({ executablePath, args: [...quietFlags] });
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});
/** Each has a context of its own, which ends with the browser. */
async function openPhone(): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  await page.goto(served.address);
  await page.waitForFunction(() => window.storePage !== undefined);
  return page;
}

/** A phone with two rounds of a pan and a sound, and the backup that it made. */
async function backupOf(page: Page): Promise<Buffer> {
  const download = page.waitForEvent('download');
  await page.evaluate(async () => {
    const { store, backups, samples, handout } = window.storePage;
    await window.storePage.fillPan(1, 2);
    const sound = samples.sampleAttachment('sound-1', 'sound', 96_000);
    await store.keep([samples.sampleEdit('edit-1', 'Ñandú ♯')], [sound]);
    const made = await backups.make({ kind: 'rack' });
    if (made.kind === 'made') await handout.handOut(made.file);
  });
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^ringwright-rack-\d{4}-\d{2}-\d{2}\.json\.gz$/);
  return readFileSync(await file.path());
}

/** In the page: checks a file of these bytes (base64) and takes it in. */
const takeIn = async (base64: string) => {
  const { backups } = window.storePage;
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const check = await backups.check(new File([bytes], 'backup'));
  if (check.kind === 'refused') return { refused: check.why };
  const { isWhole, readings, report } = check.backup;
  return { isWhole, readings, faults: report.faults, taken: await backups.takeIn(check.backup) };
};
const readings = async () => {
  const { store } = window.storePage;
  const size = await store.size();
  return size.kind === 'loaded' ? size.value : size.trouble;
};

describe('a backup in the browser', () => {
  it('is downloaded, is a gzip of plain JSON, and makes the same rack on another phone', async () => {
    const bytes = await backupOf(await openPhone());
    expect(JSON.parse(gunzipSync(bytes).toString()).counts).toEqual({
      records: 2 * (29 + 2) + 2,
      attachments: 1,
    });
    const other = await openPhone();
    expect(await other.evaluate(takeIn, bytes.toString('base64'))).toMatchObject({
      isWhole: true,
      readings: 58,
      taken: { kind: 'taken-in', added: { records: 64, attachments: 1 } },
    });
    expect(await other.evaluate(readings)).toMatchObject({ readings: 58, soundBytes: 96_000 });
  });

  it('that was cut off is taken in up to there; a damaged head is refused and touches nothing', async () => {
    const bytes = await backupOf(await openPhone());
    const other = await openPhone();
    const cut = bytes.subarray(0, Math.floor(bytes.length * 0.6)).toString('base64');
    const found = await other.evaluate(takeIn, cut);
    expect(found).toMatchObject({ isWhole: false, taken: { kind: 'taken-in' } });
    expect(found.faults).toContain('no-end');
    const third = await openPhone();
    const damaged = Buffer.from(bytes).fill(0, 10, 40).toString('base64');
    expect((await third.evaluate(takeIn, damaged)).refused).toBeDefined();
    expect(await third.evaluate(readings)).toMatchObject({ readings: 0, soundBytes: 0 });
  });

  it('that is packed to fill the phone is left early', async () => {
    const page = await openPhone();
    const bomb = gzipSync(Buffer.alloc(300 * 1024 * 1024)).toString('base64');
    const found = await page.evaluate(takeIn, bomb);
    expect(found.refused).toBe('too-large');
    expect(await page.evaluate(readings)).toMatchObject({ readings: 0, soundBytes: 0 });
  });
});
