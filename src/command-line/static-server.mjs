// Serves the built app: for `npm start`, `npm run phone` and the browser tests.
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer as createHttpServer } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';
import { extname, join, resolve, sep } from 'node:path';
import { pipeline } from 'node:stream/promises';

/** @type {Readonly<Record<string, string>>} */
const typeOf = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wav': 'audio/wav',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

/**
 * A server (not yet listening) for the files of `directory` under `basePath` ("/" or "/some/folder/").
 * With `tls` it speaks HTTPS. Answers 404 for everything outside, 405 for all but GET and HEAD.
 * @param {{ directory: string, basePath?: string, tls?: { key: string, cert: string } }} options
 * @returns {import('node:http').Server | import('node:https').Server}
 */
export function createStaticServer({ directory, basePath = '/', tls }) {
  const root = resolve(directory);
  /** @type {import('node:http').RequestListener} */
  const answer = (request, response) => {
    respond(root, basePath, request, response).catch((error) => {
      if (!response.headersSent) response.writeHead(500, { 'Content-Type': 'text/plain' });
      response.end(error instanceof Error ? error.message : 'The server failed.');
    });
  };
  return tls ? createHttpsServer(tls, answer) : createHttpServer(answer);
}

/**
 * Starts `server` on `port`, or on the next free one of the following nine; 0 takes any free port.
 * Resolves to the port in use; rejects when none of them is free.
 * @param {import('node:net').Server} server
 * @param {number} port
 * @param {string} host
 * @returns {Promise<number>}
 */
export async function listenOn(server, port, host) {
  for (let candidate = port; ; candidate += 1) {
    try {
      return await listenOnce(server, candidate, host);
    } catch (error) {
      const busy = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
      if (!busy || candidate === port + 9) throw error;
    }
  }
}

/**
 * @param {import('node:net').Server} server
 * @param {number} port
 * @param {string} host
 * @returns {Promise<number>}
 */
function listenOnce(server, port, host) {
  return new Promise((done, fail) => {
    server.once('error', fail);
    server.listen(port, host, () => {
      server.off('error', fail);
      const address = server.address();
      done(address !== null && typeof address === 'object' ? address.port : port);
    });
  });
}

/**
 * @param {string} root
 * @param {string} basePath
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
async function respond(root, basePath, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    return;
  }
  const path = pathOf(request.url ?? '/');
  if (path !== null && basePath !== '/' && `${path}/` === basePath) {
    response.writeHead(308, { Location: basePath }).end();
    return;
  }
  const file = path === null ? null : await fileFor(root, basePath, path);
  if (file === null) {
    response.writeHead(404, { 'Content-Type': 'text/plain' }).end('Not found');
    return;
  }
  response.writeHead(200, {
    'Content-Type': typeOf[extname(file.name)] ?? 'application/octet-stream',
    'Content-Length': file.size,
    'X-Content-Type-Options': 'nosniff',
    // Nobody shows the app inside a page of their own; a policy in the page itself cannot say so (CSP Level 3, 3.3).
    'Content-Security-Policy': "frame-ancestors 'none'",
    'X-Frame-Options': 'DENY',
    // Hashed files never change; everything else decides about updates and must be asked for again.
    'Cache-Control': file.name.startsWith(join(root, 'assets') + sep)
      ? 'public, max-age=31536000, immutable'
      : 'no-cache',
  });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  // Closes the file also when whoever asked for it has gone; `pipe` alone would leave it open.
  await pipeline(createReadStream(file.name), response).catch(() => response.destroy());
}

/**
 * Decoded path of a request, or null if it is malformed.
 * @param {string} url
 */
function pathOf(url) {
  try {
    const path = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? '/');
    return path.includes('\0') ? null : path;
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}

/**
 * The file behind `path`, or null if there is none inside `root`.
 * @param {string} root
 * @param {string} basePath
 * @param {string} path
 */
async function fileFor(root, basePath, path) {
  if (!path.startsWith(basePath)) return null;
  const inside = path.slice(basePath.length);
  const name = resolve(
    root,
    inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside,
  );
  if (!name.startsWith(root + sep)) return null;
  const found = await stat(name).catch(() => null);
  return found?.isFile() ? { name, size: found.size } : null;
}
