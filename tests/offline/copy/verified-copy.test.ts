import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { NoAnswer, WrongAnswer } from '../../../src/offline/copy/fetch-listed';
import type { ListedFile } from '../../../src/offline/copy/listed-file';
import { VerifiedCopy } from '../../../src/offline/copy/verified-copy';
import { MemoryCaches } from './memory-caches';

const scope = 'https://host.example/folder/';
const address = (path: string): string => new URL(path, scope).href;

type Answer = () => Response;
const text = (body: string, headers: Record<string, string> = {}): Answer => {
  return () => new Response(body, { headers });
};
const brokenOff: Answer = () =>
  new Response(
    new ReadableStream({
      pull(controller) {
        controller.error(new TypeError('content length mismatch'));
      },
    }),
  );

/** The five ways in which a network was seen to be wrong, and what each does to a file. */
const faults: Readonly<Record<string, (body: string) => Answer>> = {
  'an error of the server': () => () => new Response('no', { status: 500 }),
  'an end that comes too early, and says so': () => brokenOff,
  'an end that comes too early, and says nothing': (body) => text(body.slice(0, body.length / 2)),
  'the page of a portal': () => text('<p>Welcome! Accept our terms.</p>'),
  'the file of another version': (body) => text(`${body} of old`),
};

const bodies = {
  'index.html': '<p>the start page</p>',
  'assets/first-1a2b.js': 'start()',
  'assets/ear.worker-3c4d.js': 'listen()',
};
type Path = keyof typeof bodies;
const paths = Object.keys(bodies) as Path[];

const listed = (of: Readonly<Record<string, string>>): readonly ListedFile[] =>
  Object.entries(of).map(([path, body]) => ({
    path,
    hash: createHash('sha256').update(body).digest('base64'),
  }));

/** A phone, the host it asks, and what the host was asked for. */
function phone() {
  const caches = new MemoryCaches();
  const host = new Map<string, Answer>();
  const asked: string[] = [];
  const serve = (files: Readonly<Record<string, string>>): void => {
    for (const [path, body] of Object.entries(files)) host.set(address(path), text(body));
  };
  const copyOf = (files: Readonly<Record<string, string>>, version: string): VerifiedCopy =>
    new VerifiedCopy(listed(files), version, {
      scope,
      caches: caches.asStorage(),
      fetch: async (input) => {
        asked.push(String(input));
        const answer = host.get(String(input));
        if (!answer) throw new TypeError('no network');
        return answer();
      },
    });
  serve(bodies);
  return { caches, host, asked, serve, copyOf };
}

const bodyOf = async (copy: VerifiedCopy, path: string): Promise<string | undefined> =>
  (await copy.take(path))?.text();

describe('the copy of the app', () => {
  it('holds what the build made, and gives it out without a network', async () => {
    const { host, copyOf } = phone();
    const copy = copyOf(bodies, 'one');
    await copy.fill();
    host.clear();
    for (const path of paths) expect(await bodyOf(copy, path)).toBe(bodies[path]);
    expect(await copy.isWhole(['assets/first-1a2b.js'])).toBe(true);
  });

  describe.each(Object.entries(faults))('that meets %s', (_name, faulty) => {
    it.each(paths)('for %s is not made, and is made by the next try', async (path) => {
      const { host, serve, copyOf } = phone();
      host.set(address(path), faulty(bodies[path]));
      const copy = copyOf(bodies, 'one');
      await expect(copy.fill()).rejects.toBeInstanceOf(WrongAnswer);
      expect(await copy.isWhole([])).toBe(false);
      expect(await copy.take(path)).toBeNull();
      serve(bodies);
      await copy.fill();
      expect(await copy.isWhole([])).toBe(true);
    });

    it.each(paths)('for %s of a newer version leaves the older one whole', async (path) => {
      const { host, serve, copyOf } = phone();
      const older = copyOf(bodies, 'one');
      await older.fill();
      const newer = { ...bodies, [path]: `${bodies[path]} made better` };
      serve(newer);
      host.set(address(path), faulty(newer[path]));
      await expect(copyOf(newer, 'two').fill()).rejects.toBeInstanceOf(WrongAnswer);
      host.clear();
      expect(await older.isWhole([])).toBe(true);
      for (const each of paths) expect(await bodyOf(older, each)).toBe(bodies[each]);
    });

    it.each(paths)('in what is kept of %s never gives it out, and mends it', async (path) => {
      const { caches, host, serve, copyOf } = phone();
      const copy = copyOf(bodies, 'one');
      await copy.fill();
      const [cache] = caches.opened.values();
      await cache?.put(address(path), new Response('wrong'));
      host.set(address(path), faulty(bodies[path]));
      expect(await copy.isWhole([])).toBe(false);
      expect(await copy.take(path)).toBeNull();
      expect(await copy.mend()).toEqual({ mended: [], missing: [path] });
      serve(bodies);
      expect(await bodyOf(copy, path)).toBe(bodies[path]);
      expect(await copy.isWhole([])).toBe(true);
    });
  });

  it('tells no network from a wrong one', async () => {
    const { host, copyOf } = phone();
    host.delete(address('index.html'));
    await expect(copyOf(bodies, 'one').fill()).rejects.toBeInstanceOf(NoAnswer);
  });

  it('mends a file that keeps its name and its content in the next version', async () => {
    const { caches, copyOf } = phone();
    await copyOf(bodies, 'one').fill();
    const [cache] = caches.opened.values();
    await cache?.put(address('assets/ear.worker-3c4d.js'), new Response('wrong'));
    const next = copyOf(bodies, 'two');
    await next.fill();
    expect(await bodyOf(next, 'assets/ear.worker-3c4d.js')).toBe('listen()');
  });

  it('takes from an older copy what is the same there, without asking the network', async () => {
    const { asked, copyOf, serve } = phone();
    await copyOf(bodies, 'one').fill();
    const newer = { ...bodies, 'index.html': '<p>a newer start page</p>' };
    serve(newer);
    asked.splice(0);
    await copyOf(newer, 'two').fill();
    expect(asked).toEqual([address('index.html')]);
  });

  it('fetches after a failed try only what is still missing', async () => {
    const { asked, host, serve, copyOf } = phone();
    host.set(address('index.html'), () => new Response('', { status: 500 }));
    const copy = copyOf(bodies, 'one');
    await copy.fill().catch(() => undefined);
    serve(bodies);
    asked.splice(0);
    await copy.fill();
    expect(asked).toEqual([address('index.html')]);
  });

  it('keeps nothing of the headers of a host: neither `Vary: *` nor a wrong type', async () => {
    const { host, copyOf } = phone();
    const headers = { Vary: '*', 'Content-Type': 'text/plain', 'Set-Cookie': 'a=b' };
    for (const path of paths) host.set(address(path), text(bodies[path], headers));
    const copy = copyOf(bodies, 'one');
    await copy.fill();
    const answer = await copy.take('assets/first-1a2b.js');
    expect(answer?.headers.get('Vary')).toBeNull();
    expect(answer?.headers.get('Content-Type')).toBe('text/javascript; charset=utf-8');
    const page = await copy.take('index.html');
    expect(page?.headers.get('Content-Security-Policy')).toBe("frame-ancestors 'none'");
  });

  it('gives out a file that the phone has no room for', async () => {
    const { caches, copyOf } = phone();
    const copy = copyOf(bodies, 'one');
    await copy.fill();
    const [cache] = caches.opened.values();
    if (!cache) throw new Error('no cache');
    await cache.delete(address('index.html'));
    cache.full = new DOMException('full', 'QuotaExceededError');
    expect(await bodyOf(copy, 'index.html')).toBe(bodies['index.html']);
    expect(await copy.isWhole([])).toBe(false);
  });

  it('is not whole for a page that is made of other files', async () => {
    const { copyOf } = phone();
    const copy = copyOf(bodies, 'one');
    await copy.fill();
    expect(await copy.isWhole(['assets/first-0000.js'])).toBe(false);
  });
});

describe('copies of older versions', () => {
  const newer = { 'index.html': '<p>newer</p>', 'assets/first-5e6f.js': 'startBetter()' };

  it('still give their files to windows that are made of them, until they are dropped', async () => {
    const { serve, copyOf } = phone();
    await copyOf(bodies, 'one').fill();
    serve(newer);
    const copy = copyOf(newer, 'two');
    await copy.fill();
    const late = address('assets/ear.worker-3c4d.js');
    expect(await (await copy.older.take(late))?.text()).toBe('listen()');
    await copy.older.deleteAll();
    expect(await copy.older.take(late)).toBeNull();
    expect(await copy.isWhole([])).toBe(true);
  });

  it('never give out a file that has gone wrong', async () => {
    const { caches, copyOf } = phone();
    await copyOf(bodies, 'one').fill();
    const [cache] = caches.opened.values();
    const late = address('assets/ear.worker-3c4d.js');
    const kept = await cache?.match(late);
    await cache?.put(late, new Response('wrong', { headers: kept?.headers ?? {} }));
    expect(await copyOf(newer, 'two').older.take(late)).toBeNull();
  });

  it('of the app in another folder of the host are not touched, nor what is not the app’s', async () => {
    const { caches, copyOf } = phone();
    await (await caches.open('ringwright-copy https://host.example/other/ one')).put(
      'https://host.example/other/index.html',
      new Response('other'),
    );
    await caches.open('ringwright-waiting-files');
    const copy = copyOf(bodies, 'two');
    await copy.fill();
    await copy.older.deleteAll();
    expect(await caches.keys()).toHaveLength(3);
  });
});
