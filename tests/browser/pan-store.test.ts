// What keeps the rack, in a real browser: its IndexedDB, its quota, its windows, its locks.
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { makeDatabaseOfVersion1 } from '../storage/database/saved-database-1';
import { quietFlags } from './browser-flags';
import { type ServedStorePage, serveStorePage } from './build-store-page';

declare global {
  interface Window {
    heardChanges?: number;
    /** Lets a page go on that waits in the middle of something. */
    goOn?: () => void;
  }
}

let served: ServedStorePage;
let browser: Browser;
let context: BrowserContext;

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
beforeEach(async () => {
  context = await browser.newContext();
});
afterEach(() => context.close());

/** A window of the app. `before` runs in it first of all. */
async function openWindow(before?: () => void): Promise<Page> {
  const page = await context.newPage();
  if (before) await page.addInitScript(before);
  await page.goto(served.address);
  await page.waitForFunction(() => window.storePage !== undefined);
  return page;
}

/** A page of the same origin without the app, which never opens the database by itself. */
async function openBarePage(): Promise<Page> {
  const page = await context.newPage();
  await page.route('**/bare', (route) => route.fulfill({ contentType: 'text/html', body: 'bare' }));
  await page.goto(`${served.address}bare`);
  return page;
}

/** In the page: keeps one edit under this name. */
const keepEdit = (name: string) => {
  const { store, samples } = window.storePage;
  return store.keep([samples.sampleEdit(name, name)]);
};
/** In the page: the names of the edits of the sample's pan, or the trouble. */
const readEdits = async () => {
  const { store, samples } = window.storePage;
  const pan = await store.pan(samples.samplePan);
  return pan.kind === 'loaded' ? pan.value.edits.map(({ id }): string => id) : pan.trouble;
};

describe('the rack in the browser', () => {
  it('grows out of a database of version 1 without losing its settings', async () => {
    const bare = await openBarePage();
    await bare.evaluate(`(${makeDatabaseOfVersion1})(indexedDB)`);
    const page = await openWindow();
    expect(await page.evaluate(keepEdit, 'edit-1')).toEqual({ kind: 'kept' });
    expect(await page.evaluate(() => window.storePage.settings.load())).toMatchObject({
      kind: 'loaded',
      settings: { a4: 442, theme: 'light' },
    });
  });

  it('is still there, sound and all, when it is opened again', async () => {
    const first = await openWindow();
    await first.evaluate(async () => {
      const { store, samples } = window.storePage;
      const round = samples.sampleRound('round-1');
      const sound = samples.sampleAttachment('sound-1', 'sound', 96_000);
      await store.keep([round, samples.sampleReading('reading-1', round)], [sound]);
    });
    await first.close();
    const second = await openWindow();
    const found = await second.evaluate(async () => {
      const { store, samples } = window.storePage;
      const expected = samples.sampleAttachment('sound-1', 'sound', 96_000);
      const sound = await store.attachment(expected.id);
      return {
        readings: await store.readingsOfNote(samples.samplePan, samples.sampleMark('m').note),
        size: await store.size(),
        isSame:
          sound.kind === 'loaded' &&
          sound.value?.bytes.every((byte, n) => byte === expected.bytes[n]),
      };
    });
    expect(found.readings).toMatchObject({ kind: 'loaded', value: [{ id: 'reading-1' }] });
    expect(found.size).toMatchObject({ value: { readings: 1, soundBytes: 96_000 } });
    expect(found.isSame).toBe(true);
  });

  it('takes what two windows write at the same time, and tells each of the other', async () => {
    const [one, other] = [await openWindow(), await openWindow()];
    const listen = () => {
      window.heardChanges = 0;
      window.storePage.store.onChange(() => {
        window.heardChanges = (window.heardChanges ?? 0) + 1;
      });
    };
    const write = async (name: string) => {
      const { store, samples } = window.storePage;
      await Promise.all(
        Array.from({ length: 50 }, (_, n) =>
          store.keep([samples.sampleEdit(`${name}-${n}`, name), samples.sampleEdit('same', name)]),
        ),
      );
    };
    const heard = () =>
      Promise.all([one, other].map((page) => page.evaluate(() => window.heardChanges)));
    await one.evaluate(listen);
    await other.evaluate(listen);
    await Promise.all([one.evaluate(write, 'one'), other.evaluate(write, 'other')]);
    await expect.poll(heard).toEqual([100, 100]);
    expect(await one.evaluate(readEdits)).toHaveLength(101);
    // One more is one more in each: nothing was told twice and came late.
    await one.evaluate(keepEdit, 'last');
    await expect.poll(heard).toEqual([101, 101]);
  });

  it('does not keep a card that was made before another window wrote', async () => {
    const [one, other] = [await openWindow(), await openWindow()];
    await one.evaluate(keepEdit, 'edit-1');
    const keepCard = async () => {
      const { store, samples } = window.storePage;
      const records = await store.pan(samples.samplePan);
      await new Promise<void>((done) => {
        window.goOn = done;
      });
      if (records.kind === 'loaded') await store.keepCard(samples.sampleCard(), records.value);
      const cards = await store.cards();
      return cards.kind === 'loaded' && cards.value.cards.length;
    };
    const hasRead = () => one.waitForFunction(() => window.goOn !== undefined);
    const goOn = () => {
      window.goOn?.();
      delete window.goOn;
    };
    const late = one.evaluate(keepCard);
    await hasRead();
    await other.evaluate(keepEdit, 'edit-2');
    await one.evaluate(goOn);
    expect(await late).toBe(0);
    const inTime = one.evaluate(keepCard);
    await hasRead();
    await one.evaluate(goOn);
    expect(await inTime).toBe(1);
  });

  it('says that the phone is full, has nothing torn, and goes on when there is room again', async () => {
    const page = await openWindow();
    const session = await context.newCDPSession(page);
    const { origin } = new URL(served.address);
    const setQuota = (quotaSize?: number) =>
      session.send('Storage.overrideQuotaForOrigin', {
        origin,
        ...(quotaSize === undefined ? {} : { quotaSize }),
      });
    // Before the first write: Chromium remembers for half a minute how much room there was.
    await setQuota(100_000);
    await page.evaluate(keepEdit, 'edit-1');
    const keepMuch = () => {
      const { store, samples } = window.storePage;
      const sound = samples.sampleAttachment('sound-1', 'sound', 1_000_000);
      return store.keep([samples.sampleEdit('edit-2', 'with sound')], [sound]);
    };
    expect(await page.evaluate(keepMuch)).toEqual({ kind: 'trouble', trouble: 'full' });
    expect(await page.evaluate(readEdits)).toEqual(['edit-1']);
    await setQuota();
    expect(await page.evaluate(keepMuch)).toEqual({ kind: 'kept' });
    expect(await page.evaluate(readEdits)).toEqual(['edit-1', 'edit-2']);
  });

  it('says that there is no storage where the browser has none', async () => {
    const page = await openWindow(() => {
      Object.defineProperty(window, 'indexedDB', { value: undefined });
    });
    const unavailable = { kind: 'trouble', trouble: 'unavailable' };
    expect(await page.evaluate(keepEdit, 'edit-1')).toEqual(unavailable);
    expect(await page.evaluate(() => window.storePage.store.cards())).toEqual(unavailable);
    expect(await page.evaluate(() => window.storePage.settings.load())).toEqual({
      kind: 'unavailable',
    });
  });

  it('says that there is no storage where asking for it is refused', async () => {
    const page = await openWindow(() => {
      Object.defineProperty(window, 'indexedDB', {
        get() {
          throw new DOMException('The operation is insecure.', 'SecurityError');
        },
      });
    });
    expect(await page.evaluate(readEdits)).toBe('unavailable');
  });

  it('leaves a database of a newer version alone and says so', async () => {
    const bare = await openBarePage();
    await bare.evaluate(
      () =>
        new Promise((done) => {
          const request = indexedDB.open('ringwright', 99);
          request.onsuccess = () => done(request.result.close());
        }),
    );
    const page = await openWindow();
    expect(await page.evaluate(readEdits)).toBe('newer');
    expect(await page.evaluate(keepEdit, 'edit-1')).toEqual({ kind: 'trouble', trouble: 'newer' });
  });

  it('says when an older window holds it up, and works once that one is closed', async () => {
    const older = await openBarePage();
    await older.evaluate(
      () =>
        new Promise<void>((done) => {
          const request = indexedDB.open('ringwright', 1);
          request.onsuccess = () => {
            // Held on to for as long as the window is open.
            Object.assign(window, { held: request.result });
            done();
          };
        }),
    );
    const page = await openWindow();
    expect(await page.evaluate(readEdits)).toBe('other-window');
    expect(await page.evaluate(keepEdit, 'edit-1')).toEqual({
      kind: 'trouble',
      trouble: 'other-window',
    });
    await older.close();
    await expect.poll(() => page.evaluate(keepEdit, 'edit-1')).toEqual({ kind: 'kept' });
  });

  it('opens a new connection when the browser has ended the old one', async () => {
    const page = await openWindow();
    await page.evaluate(keepEdit, 'edit-1');
    const session = await context.newCDPSession(page);
    const { origin } = new URL(served.address);
    // Ends the connections of the page along with the data.
    await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
    // It ends them in its own time: what reads in that moment may be told so.
    await expect.poll(() => page.evaluate(readEdits)).toEqual([]);
    // Said once, so that whoever keeps something can keep again what is gone; then it goes on.
    expect(await page.evaluate(keepEdit, 'edit-2')).toEqual({
      kind: 'trouble',
      trouble: 'deleted',
    });
    expect(await page.evaluate(keepEdit, 'edit-2')).toEqual({ kind: 'kept' });
    expect(await page.evaluate(readEdits)).toEqual(['edit-2']);
  });

  it('says how safe it is and how much it takes', async () => {
    const page = await openWindow();
    const state = await page.evaluate(() => window.storePage.health.look());
    expect(state.durability).toBe('best-effort');
    expect(state.mostBytes).toBeGreaterThan(1_000_000);
    const answer = await page.evaluate(() => window.storePage.health.askToKeep());
    expect(['persistent', 'best-effort']).toContain(answer);
  });
});

describe('the microphone', () => {
  it('belongs to one window until that one lets go or is closed', async () => {
    const [one, other] = [await openWindow(), await openWindow()];
    const take = () => window.storePage.turn.take();
    expect(await one.evaluate(take)).toBe('ours');
    expect(await other.evaluate(take)).toBe('other-window');
    await one.evaluate(() => window.storePage.turn.release());
    await expect.poll(() => other.evaluate(take)).toBe('ours');
    expect(await one.evaluate(take)).toBe('other-window');
    await other.close();
    await expect.poll(() => one.evaluate(take)).toBe('ours');
  });
});
