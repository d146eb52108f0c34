// Files between two phones: sent, received, merged; shared with the app and opened with it; and files that mean harm.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import type { RackRecord } from '../../src/domain/records/rack-records';
import { recordId } from '../../src/domain/records/rack-records';
import { instant } from '../../src/domain/tuning/units';
import { sharePath } from '../../src/offline/waiting-place';
import { signed, written } from '../domain/records/backup/backup-sample';
import { millionReadings } from '../domain/records/backup/million-readings';
import { firstDay } from '../domain/rounds/round-sample';
import { sampleEdit } from '../storage/rack/rack-sample';
import { downloaded } from './downloaded';
import { keptRecords } from './kept-records';
import { type OpenedApp, openApp } from './open-app';
import { openWithRecords, type SeededOptions } from './rack-seed';
import { asPan, panWith } from './seeded-pans';

const opened: OpenedApp[] = [];
const folders: string[] = [];
afterEach(async () => {
  await Promise.all(opened.splice(0).map((app) => app.close()));
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

interface ChosenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A phone with these records, with the app open at its first screen. */
async function phone(
  records: readonly RackRecord[] = [],
  options: SeededOptions = {},
): Promise<OpenedApp> {
  const app =
    records.length === 0
      ? await openApp('#/', options)
      : await openWithRecords('#/', { records }, options);
  opened.push(app);
  return app;
}

const link = (page: Page, name: string) => page.getByRole('link', { name, exact: true });
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const state = (page: Page, into: string) => page.locator(`[data-into="${into}"]`);

/** The file that a tap on the button downloads. */
async function handedOut(page: Page): Promise<ChosenFile> {
  const coming = page.waitForEvent('download');
  await button(page, 'Save or send the file').click();
  const download = await coming;
  const buffer = await downloaded(download);
  return { name: download.suggestedFilename(), mimeType: '', buffer };
}

/** From the rack: the whole of it in a file. */
async function rackOf(page: Page): Promise<ChosenFile> {
  await link(page, 'Back up').click();
  await button(page, 'Make the file').click();
  const file = await handedOut(page);
  await link(page, 'Back').click();
  return file;
}

/** From the rack, in two taps: the screen that takes files in, with this file chosen. */
async function choose(page: Page, file: ChosenFile): Promise<void> {
  await link(page, 'Back up').click();
  await link(page, 'Load or restore a file').click();
  await page.locator('main.exchange input[type="file"]').setInputFiles(file);
}

const heron = panWith({ name: 'Heron', owner: 'Ines', remarks: 'Dent beside D4' }, [
  {},
  { day: 30 },
]);
const otter = asPan('otter', panWith({ name: 'Otter' }, [{ day: 3 }]));

/** An edit of Heron that knows of nothing but the first one. */
const renamed = (id: string, name: string, minutes: number): RackRecord => ({
  ...sampleEdit(id, name),
  fields: { name },
  at: instant(firstDay + minutes * 60_000),
  replaces: [recordId('edit-1')],
});

describe('a pan sent from one phone to another', () => {
  it('says what is in the file before it goes, asks there before anything is kept, and is the same pan then', async () => {
    const sender = await phone(heron);
    await sender.page.locator('[data-pan="pan-1"]').click();
    await link(sender.page, 'Send this pan').click();
    for (const line of ['2 rounds, 58 readings', 'name of the owner: Ines']) {
      await sender.page.getByText(line).waitFor();
    }
    await sender.page.getByText('Anyone who has the file can read all of it.').waitFor();
    const file = await handedOut(sender.page);
    expect(file.name).toMatch(/^ringwright-Heron-\d{4}-\d{2}-\d{2}\.json\.gz$/);

    const receiver = await phone();
    const before = await keptRecords(receiver.page);
    await choose(receiver.page, file);
    await receiver.page.getByText('Heron is not on your rack yet.').waitFor();
    expect(await keptRecords(receiver.page)).toEqual(before);
    await button(receiver.page, 'Take this pan over').click();
    await receiver.page.getByText('Heron is on your rack now.').waitFor();
    expect(await keptRecords(receiver.page)).toEqual(await keptRecords(sender.page));
    await link(receiver.page, 'Rack').click();
    await receiver.page.locator('[data-pan="pan-1"]').waitFor();
    expect([...sender.problems, ...receiver.problems]).toEqual([]);
  });

  it('is text in its name and in what is sent on a phone whose share sheet passes on only text', async () => {
    const sender = await phone(heron, { beforeApp: beAnAndroidPhone });
    await sender.page.goto(`${sender.address}#/pan/pan-1/send`);
    await sender.page.getByText('is ready').waitFor();
    await button(sender.page, 'Save or send the file').click();
    await sender.page.getByText('The file was handed on.').waitFor();
    const shared = await sender.page.evaluate(async () => {
      const [file] = window.sharedFiles ?? [];
      return file && { name: file.name, type: file.type, text: await file.text() };
    });
    expect(shared?.name).toMatch(/\.json\.txt$/);
    expect(shared?.type).toBe('text/plain');
    const receiver = await phone();
    // As a mail program would have it, with its own line breaks.
    const text = shared?.text.replaceAll('\n', '\r\n') ?? '';
    await choose(receiver.page, {
      name: 'a.txt',
      mimeType: 'text/plain',
      buffer: Buffer.from(text),
    });
    await button(receiver.page, 'Take this pan over').click();
    await state(receiver.page, 'taken').waitFor();
    expect(await keptRecords(receiver.page)).toEqual(await keptRecords(sender.page));
  });
});

describe('two racks made one', () => {
  it('in both directions and twice, lose nothing, double nothing, and ask what two phones wrote differently', async () => {
    const ours = await phone([...heron, renamed('edit-a', 'Blue heron', 1)]);
    const theirs = await phone([...heron, renamed('edit-b', 'Grey heron', 2), ...otter]);
    const count = async (app: OpenedApp) => (await keptRecords(app.page)).length;
    const [inOurs, inTheirs] = [await count(ours), await count(theirs)];

    await choose(ours.page, await rackOf(theirs.page));
    await ours.page.getByText('A rack with 1 pan that you do not have.').waitFor();
    await button(ours.page, 'Join this rack').click();
    await ours.page.getByText('Otter is on your rack now.').waitFor();
    await ours.page.getByText('Grey heron has what was new.').waitFor();
    const settle = ours.page.getByRole('link', { name: /Two phones wrote different things/ });
    expect(await settle.textContent()).toContain('name of the pan');
    await link(ours.page, 'Rack').click();
    await choose(theirs.page, await rackOf(ours.page));
    await button(theirs.page, 'Add what is new').click();
    await state(theirs.page, 'taken').waitFor();
    await link(theirs.page, 'Rack').click();

    const all = await keptRecords(ours.page);
    expect(await keptRecords(theirs.page)).toEqual(all);
    // All of both: the records of Heron that both had are there once.
    expect(all).toHaveLength(inOurs + inTheirs - heron.length);

    for (const [from, to] of [
      [ours, theirs],
      [theirs, ours],
    ] as const) {
      await choose(to.page, await rackOf(from.page));
      await button(to.page, 'Add what is new').click();
      await to.page.getByText('Everything in it was here already.').waitFor();
      await link(to.page, 'Rack').click();
      expect(await keptRecords(to.page)).toEqual(all);
    }
  });

  it('lead to the question which value is right, and to one value when it is answered', async () => {
    const app = await phone([...heron, renamed('edit-a', 'Blue heron', 1)]);
    const other = [...heron, renamed('edit-b', 'Grey heron', 2)];
    await choose(app.page, fileOf(other));
    await button(app.page, 'Add what is new').click();
    await app.page.getByRole('link', { name: /Two phones wrote different things/ }).click();
    await app.page.getByRole('button', { name: /^Blue heron/ }).click();
    await app.page.getByRole('button', { name: /^Grey heron/ }).waitFor({ state: 'detached' });
    const name = app.page.getByLabel('Name of the pan');
    await expect.poll(() => name.inputValue()).toBe('Blue heron');
  });
});

const fileOf = (records: readonly RackRecord[], name = 'from a friend.json.gz'): ChosenFile => ({
  name,
  mimeType: 'application/gzip',
  buffer: gzipSync(written(records.map((record) => ({ kind: 'record', record })))),
});

/** Sends files to the app as a phone's share sheet does, and as any page could: by a form. */
async function share(app: OpenedApp, files: readonly ChosenFile[]): Promise<void> {
  await app.page.evaluate(async () => navigator.serviceWorker.ready);
  const page = await app.context.newPage();
  await page.setContent(
    `<form method="post" enctype="multipart/form-data" action="${app.address}${sharePath}">
       <input type="file" name="file" multiple><button>Share</button>
     </form>`,
  );
  await page.locator('input').setInputFiles([...files]);
  await page.locator('button').click();
  await page.waitForURL(`${app.address}#/receive`);
  await page.locator('main').waitFor();
  await app.page.close();
  Object.assign(app, { page });
}

describe('a file that is shared with the app', () => {
  it('waits through a restart, is asked about, and is added only when the user says so', async () => {
    const app = await phone(otter, { basePath: '/some/folder/', withOfflineCopy: true });
    const before = await keptRecords(app.page);
    await share(app, [fileOf(heron)]);
    await app.page.getByText('Heron is not on your rack yet.').waitFor();
    await app.page.getByText('from a friend.json.gz').waitFor();
    expect(await keptRecords(app.page)).toEqual(before);

    await app.page.goto('about:blank');
    await app.page.goto(app.address);
    await app.page.getByRole('link', { name: /A file waits to be taken in/ }).click();
    await button(app.page, 'Take this pan over').click();
    await app.page.getByText('Heron is on your rack now.').waitFor();
    await link(app.page, 'Rack').click();
    await app.page.locator('[data-pan="pan-1"]').waitFor();
    // It is let go of once all of it is on the rack.
    await expect.poll(() => app.page.getByText('A file waits').count()).toBe(0);
    expect(await keptRecords(app.page)).toHaveLength(heron.length + otter.length);
    await app.page.reload();
    await app.page.locator('[data-pan="pan-1"]').waitFor();
    expect(await app.page.getByText('A file waits').count()).toBe(0);
  });

  it('is gone without a trace when the user does not want it, and the next one is asked about', async () => {
    const app = await phone(otter, { withOfflineCopy: true });
    const before = await keptRecords(app.page);
    await share(app, [fileOf(heron, 'one.gz'), fileOf(heron, 'two.gz')]);
    await app.page.getByText('one.gz').waitFor();
    await button(app.page, 'Do not take it in').click();
    await app.page.getByText('two.gz').waitFor();
    await button(app.page, 'Do not take it in').click();
    await app.page.getByText('No file waits here.').waitFor();
    expect(await keptRecords(app.page)).toEqual(before);
    const left = async () => {
      const names = (await caches.keys()).filter((name) => name.includes('waiting'));
      return (await Promise.all(names.map(async (name) => (await caches.open(name)).keys()))).flat()
        .length;
    };
    // The screen does not wait until it is gone.
    await expect.poll(() => app.page.evaluate(left)).toBe(0);
  });

  it('is one of several: each is asked about after what the one before has brought was seen', async () => {
    const app = await phone();
    await share(app, [fileOf(heron, 'one.gz'), fileOf(otter, 'two.gz')]);
    await button(app.page, 'Take this pan over').click();
    await app.page.getByText('Heron is on your rack now.').waitFor();
    await button(app.page, 'Look at the next file: two.gz').click();
    await app.page.getByText('Otter is not on your rack yet.').waitFor();
    await button(app.page, 'Take this pan over').click();
    await app.page.getByText('Otter is on your rack now.').waitFor();
    expect(await keptRecords(app.page)).toHaveLength(heron.length + otter.length);
  });

  it('is put away when it was refused', async () => {
    const app = await phone();
    await share(app, [{ name: 'diary.txt', mimeType: 'text/plain', buffer: Buffer.from('Dear') }]);
    await app.page.getByText('This file was not made by this app.').waitFor();
    await button(app.page, 'Do not take it in').click();
    await app.page.getByText('No file waits here.').waitFor();
  });

  it('may be none at all: then the screen says how to choose one', async () => {
    const app = await phone();
    await share(app, []);
    await app.page.getByText('No file waits here. Choose one').waitFor();
    await app.page.locator('input[type="file"]').waitFor();
  });

  it('is taken in without a server, too', async () => {
    const app = await phone(otter, { withOfflineCopy: true });
    await app.page.locator('[data-offline="ready"]').waitFor();
    await app.stopServer();
    await share(app, [fileOf(heron)]);
    await button(app.page, 'Take this pan over').click();
    await app.page.getByText('Heron is on your rack now.').waitFor();
  });
});

describe('a file that is opened with the app', () => {
  const launch = (page: Page, file: ChosenFile) =>
    page.evaluate(
      ({ name, base64 }) => {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        window.launched?.({ files: [{ getFile: async () => new File([bytes], name) }] });
      },
      { name: file.name, base64: file.buffer.toString('base64') },
    );

  it('leads from the rack to the question about it', async () => {
    const app = await phone(otter, { beforeApp: standInForLaunchQueue });
    await app.page.waitForFunction(() => window.launched !== undefined);
    await launch(app.page, fileOf(heron));
    await app.page.getByText('Heron is not on your rack yet.').waitFor();
    await button(app.page, 'Take this pan over').click();
    await app.page.getByText('Heron is on your rack now.').waitFor();
  });

  it('leads nobody away from a half-filled form: the rack tells of it', async () => {
    const app = await phone(otter, { beforeApp: standInForLaunchQueue });
    await app.page.waitForFunction(() => window.launched !== undefined);
    await app.page.locator('[data-pan="otter"]').click();
    await link(app.page, 'Name and details').click();
    await app.page.getByLabel('Name of the pan').fill('Half a name');
    await launch(app.page, fileOf(heron));
    await app.page.waitForTimeout(300);
    expect(await app.page.getByLabel('Name of the pan').inputValue()).toBe('Half a name');
    await link(app.page, 'Back').click();
    await link(app.page, 'Rack').click();
    await app.page.getByRole('link', { name: /A file waits to be taken in/ }).waitFor();
  });
});

const million = 1_000_000;
const head =
  '{"format":"ringwright-rack","version":1,"made":0,"app":"0.1.0","pans":1,"records":[\n';
const edit = (fields: string) =>
  signed(
    `{"shape":1,"pan":"pan-9","at":1,"id":"edit-9","kind":"pan-edit","replaces":[],"fields":{${fields}}}`,
  );
const hostile: readonly (readonly [string, () => Buffer])[] = [
  ['gzip that grows to 2 GB', () => twoGigabytes()],
  ['gzip in gzip', () => gzipSync(gzipSync(Buffer.alloc(100 * million)))],
  ['a million lines', () => gzipSync(head + 'x\n'.repeat(million))],
  [
    'a million records with wrong checksums',
    () => Buffer.from(head + '["00000000",{"shape":1,"kind":"mark"}],\n'.repeat(million)),
  ],
  [
    'a million notes on one pan',
    () =>
      gzipSync(
        `${head}${edit(`"layout":{"drums":[{"notes":[${'{"note":60},'.repeat(million)}{}]}]}`)}\n`,
      ),
  ],
  ['a million good readings of one pan', () => millionReadings()],
  ['half a million lists in each other', () => Buffer.from(head + '['.repeat(million / 2))],
  ['a line without an end', () => Buffer.from(head + 'a'.repeat(60 * million))],
  [
    'names of the language',
    () => Buffer.from(`${head}${signed('{"__proto__":{"kind":"mark"},"constructor":1}')}\n`),
  ],
  ['numbers that are none', () => Buffer.from(`${head}${edit('"a4":NaN,"name":Infinity')}\n`)],
  ['a web page', () => Buffer.from('<!doctype html><script>document.title="broken"</script>')],
  ['a newer version', () => Buffer.from(head.replace('"version":1', '"version":99'))],
];

/** Gzip members one after the other are one file (RFC 1952, 2.2), so that a test need not pack 2 GB. */
const twoGigabytes = (): Buffer =>
  Buffer.concat(Array<Buffer>(20).fill(gzipSync(Buffer.alloc(100 * million))));

describe('a file that means harm', () => {
  it('is refused in a clear sentence within a second, in little memory, and nothing that is kept changes', async () => {
    const app = await phone(otter, { beforeApp: recordIntoStates, ownBrowser: true });
    const before = await keptRecords(app.page);
    const session = await app.context.newCDPSession(app.page);
    await session.send('Performance.enable');
    const heap = async () => {
      await app.page.requestGC();
      const { metrics } = await session.send('Performance.getMetrics');
      return metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? 0;
    };
    await app.page.goto(`${app.address}#/receive`);
    await app.page.reload();
    await state(app.page, 'idle').waitFor();
    const used = await heap();
    const folder = mkdtempSync(join(tmpdir(), 'ringwright-hostile-'));
    folders.push(folder);
    const path = join(folder, 'harmless.json.gz');
    for (const [name, make] of hostile) {
      writeFileSync(path, make());
      // A busy machine stretches one time, not three.
      const times: number[] = [];
      do {
        await app.page.locator('input[type="file"]').setInputFiles(path);
        await app.page.waitForFunction(() => window.intoStates?.at(-1)?.state === 'refused');
        const states = await app.page.evaluate(() => window.intoStates?.splice(0) ?? []);
        const checking = states.find((each) => each.state === 'checking')?.at ?? 0;
        times.push((states.at(-1)?.at ?? Number.POSITIVE_INFINITY) - checking);
        const sentence = await state(app.page, 'refused').textContent();
        expect(sentence, name).toContain('Nothing was changed.');
      } while (Math.min(...times) >= 1000 && times.length < 3);
      expect(Math.min(...times), name).toBeLessThan(1000);
    }
    expect((await heap()) - used).toBeLessThan(20 * million);
    expect(await app.page.title()).toBe('Ringwright');
    expect(await keptRecords(app.page)).toEqual(before);
    expect(app.problems).toEqual([]);
  });

  it('by a script in every text is shown as text, on every screen that shows it', async () => {
    const script = `<img src="x" onerror="document.title='broken'"><script>document.title='broken'</script>`;
    const records = panWith(
      {
        name: script,
        owner: script,
        maker: script,
        serial: script,
        finish: script,
        remarks: script,
      },
      [{}],
    );
    const app = await phone(otter);
    await choose(app.page, fileOf(records, `${script.replaceAll('/', '')}.json.gz`));
    await app.page.getByText(script).first().waitFor();
    await button(app.page, 'Take this pan over').click();
    await state(app.page, 'taken').waitFor();
    for (const route of [
      '#/',
      '#/pan/pan-1',
      '#/pan/pan-1/details',
      '#/pan/pan-1/send',
      '#/backup',
    ]) {
      await app.page.goto(`${app.address}${route}`);
      await app.page.locator('main').waitFor();
      await app.page.waitForTimeout(200);
      expect(await app.page.locator('img[src="x"], main script').count(), route).toBe(0);
    }
    expect(await app.page.title()).toBe('Ringwright');
    expect(app.problems).toEqual([]);
  });
});

declare global {
  interface Window {
    intoStates?: { readonly state: string; readonly at: number }[];
    sharedFiles?: readonly File[];
    launched?: (launch: { files: { getFile(): Promise<File> }[] }) => void;
  }
}

/** Runs in the page before the app: when the screen showed which state of a file. */
function recordIntoStates(): void {
  const states: { state: string; at: number }[] = [];
  window.intoStates = states;
  new MutationObserver(() => {
    const state = document.querySelector<HTMLElement>('[data-into]')?.dataset['into'];
    if (state !== undefined && state !== states.at(-1)?.state) {
      states.push({ state, at: performance.now() });
    }
  }).observe(document, { subtree: true, childList: true, attributes: true });
}

/** Runs in the page before the app: the browser's queue of files that the app was started with. */
function standInForLaunchQueue(): void {
  Object.defineProperty(window, 'launchQueue', {
    value: {
      setConsumer(consumer: NonNullable<Window['launched']>) {
        window.launched = consumer;
      },
    },
  });
}

/** Runs in the page before the app: a finger for a pointer, and a share sheet that takes text only. */
function beAnAndroidPhone(): void {
  const { matchMedia } = window;
  window.matchMedia = (query) =>
    matchMedia.call(window, query === '(pointer: coarse)' ? 'all' : query);
  Object.defineProperty(navigator, 'canShare', { value: () => true });
  Object.defineProperty(navigator, 'share', {
    value: async ({ files }: { files: readonly File[] }) => {
      if (files[0]?.type !== 'text/plain') throw new DOMException('type', 'NotAllowedError');
      window.sharedFiles = files;
    },
  });
}
