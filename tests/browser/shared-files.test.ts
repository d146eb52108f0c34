// What is shared with the app comes from anywhere: how much is let in, from whom, and that nothing is lost by it.
import { createServer } from 'node:http';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { listenOn } from '../../src/command-line/static-server.mjs';
import { mostBytes, mostWaiting, sharePath, waitingCache } from '../../src/offline/waiting-place';
import { type OpenedApp, openApp } from './open-app';

interface Sent {
  readonly name: string;
  readonly bytes: number;
}

describe('what is shared', () => {
  const site = createServer((_request, response) => {
    response.setHeader('Content-Type', 'text/html');
    response.end('<h1>Another site</h1>');
  });
  let elsewhere = '';
  let app: OpenedApp;
  beforeAll(async () => {
    // Another name is another site to a browser.
    elsewhere = `http://127.0.0.1:${await listenOn(site, 0, '127.0.0.1')}/`;
  });
  beforeEach(async () => {
    app = await openApp('#/');
    await app.page.locator('[data-offline="ready"]').waitFor();
  });
  afterEach(() => app.close());
  afterAll(() => {
    site.closeAllConnections();
    site.close();
  });

  /** By a form: from a page with an address, or without one, as a phone's share sheet sends it. */
  async function send(files: readonly Sent[], from: string): Promise<void> {
    const page = await app.context.newPage();
    await page.goto(from);
    await page.evaluate(sendForm, { files, action: `${app.address}${sharePath}` });
    await page.waitForURL(`${app.address}#/receive`);
    await page.locator('main').waitFor();
    await app.page.close();
    Object.assign(app, { page });
  }

  const waiting = () =>
    app.page.evaluate(async (name) => {
      const answers = await (await caches.open(name)).matchAll();
      const named = answers.filter(({ headers }) => headers.has('X-File-Name'));
      return Promise.all(
        named.map(async (each) => ({
          name: each.headers.get('X-File-Name'),
          bytes: (await each.blob()).size,
        })),
      );
    }, waitingCache);

  it('by a page of another site is not let in, and what waits stays', async () => {
    await send([{ name: 'mine.txt', bytes: 1000 }], 'about:blank');
    expect(await waiting()).toEqual([{ name: 'mine.txt', bytes: 1000 }]);
    await send([{ name: 'theirs.txt', bytes: 1000 }], elsewhere);
    await app.page.getByText('Another site tried to put a file in here.').waitFor();
    expect(await waiting()).toEqual([{ name: 'mine.txt', bytes: 1000 }]);
  });

  it('while something waits is added to it, and neither is lost', async () => {
    await send([{ name: 'one.txt', bytes: 1000 }], 'about:blank');
    await send([{ name: 'two.txt', bytes: 2000 }], 'about:blank');
    expect(await waiting()).toEqual([
      { name: 'one.txt', bytes: 1000 },
      { name: 'two.txt', bytes: 2000 },
    ]);
    await app.page.getByText('one.txt').waitFor();
  });

  it('and is longer than is allowed is said to be so and leaves nothing behind', async () => {
    await send([{ name: 'huge.txt', bytes: mostBytes + 1 }], 'about:blank');
    await app.page.getByText('What was shared is larger than 100 MB and was not kept.').waitFor();
    expect(await waiting()).toEqual([]);
  });

  it('and does not fit beside what waits is said not to be kept', async () => {
    const many = Array.from({ length: mostWaiting }, (_, k) => ({ name: `${k}.txt`, bytes: 10 }));
    await send(many, 'about:blank');
    await send([{ name: 'one more.txt', bytes: 10 }], 'about:blank');
    await app.page.getByText('What was shared now was not kept').waitFor();
    expect(await waiting()).toHaveLength(mostWaiting);
    // Told once.
    await app.page.reload();
    await app.page.locator('main').waitFor();
    expect(await app.page.getByText('What was shared now was not kept').count()).toBe(0);
  });
});

/** In the page: a form with files of so many bytes is sent off. */
function sendForm({ files, action }: { files: readonly Sent[]; action: string }): void {
  const form = document.createElement('form');
  Object.assign(form, { method: 'post', enctype: 'multipart/form-data', action });
  const input = document.createElement('input');
  Object.assign(input, { type: 'file', name: 'file', multiple: true });
  const transfer = new DataTransfer();
  for (const { name, bytes } of files) transfer.items.add(new File([new Uint8Array(bytes)], name));
  input.files = transfer.files;
  form.append(input);
  document.body.append(form);
  form.submit();
}
