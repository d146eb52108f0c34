import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';

const folder = mkdtempSync(join(tmpdir(), 'ringwright-server-'));
const served = join(folder, 'dist');
const server = createStaticServer({ directory: served, basePath: '/pans/' });
let port = 0;

beforeAll(async () => {
  mkdirSync(join(served, 'assets'), { recursive: true });
  writeFileSync(join(served, 'index.html'), '<p>app</p>');
  writeFileSync(join(served, 'sw.js'), '1');
  writeFileSync(join(served, 'assets', 'a-1.js'), '2');
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  port = await listenOn(server, 0, '127.0.0.1');
});

afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

/** Asks with the path exactly as written: fetch would tidy it up. */
const ask = (path: string) =>
  new Promise<{ status: number; type: string; cache: string; body: string }>((done, fail) => {
    get({ host: '127.0.0.1', port, path }, (response) => {
      let body = '';
      response.on('data', (chunk) => {
        body += String(chunk);
      });
      response.on('end', () => {
        done({
          status: response.statusCode ?? 0,
          type: response.headers['content-type'] ?? '',
          cache: response.headers['cache-control'] ?? '',
          body,
        });
      });
    }).on('error', fail);
  });

test('the folder itself answers with its index page, never from a cache', async () => {
  expect(await ask('/pans/')).toEqual({
    status: 200,
    type: 'text/html; charset=utf-8',
    cache: 'no-cache',
    body: '<p>app</p>',
  });
});

test('the service worker is asked for again each time, hashed files are kept', async () => {
  expect((await ask('/pans/sw.js')).cache).toBe('no-cache');
  expect(await ask('/pans/assets/a-1.js')).toMatchObject({
    type: 'text/javascript; charset=utf-8',
    cache: 'public, max-age=31536000, immutable',
  });
});

test.each([
  '/pans/../secret.txt',
  '/pans/%2e%2e/secret.txt',
  '/pans/..%2fsecret.txt',
  '/pans/assets/..%2f..%2fsecret.txt',
  '/secret.txt',
  '/pans/none.js',
  '/pans/%E0%A4%A',
  '/pans/a%00b',
])('%s is not found', async (path) => {
  const { status, body } = await ask(path);
  expect(status).toBe(404);
  expect(body).not.toContain('secret');
});

test('no page may show the app inside itself', async () => {
  const response = await fetch(`http://127.0.0.1:${port}/pans/`);
  expect(response.headers.get('Content-Security-Policy')).toBe("frame-ancestors 'none'");
  expect(response.headers.get('X-Frame-Options')).toBe('DENY');
});

/** Resolves once the answer has begun, and hangs up. */
const hangUp = (path: string) =>
  new Promise<void>((done) => {
    const asking = get({ host: '127.0.0.1', port, path }, () => asking.destroy());
    asking.on('close', done).on('error', () => undefined);
  });

/** How many files, sockets and the like this process has open, as Linux and macOS tell. */
const openHandles = () => readdirSync('/dev/fd').length;

test('a download that nobody waits for leaves no file open', async () => {
  // More than the sockets of both sides take in.
  writeFileSync(join(served, 'assets', 'long.wav'), new Uint8Array(20_000_000));
  const before = openHandles();
  for (let round = 0; round < 20; round++) {
    await Promise.all(Array.from({ length: 10 }, () => hangUp('/pans/assets/long.wav')));
  }
  // Sockets of other tests may come and go.
  await vi.waitFor(() => expect(openHandles() - before).toBeLessThan(10), { timeout: 10_000 });
}, 60_000);

test('a busy port is passed over for the next one', async () => {
  const second = createStaticServer({ directory: served });
  const other = await listenOn(second, port, '127.0.0.1');
  expect(other).toBeGreaterThan(port);
  second.close();
});
