// A host, and the network between it and the phone, which can be made wrong in several ways.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { ServerResponse } from 'node:http';
import { basename, extname, join } from 'node:path';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';

export const faults = [
  'status 500',
  'honest cut',
  'silent cut',
  'portal',
  'other version',
] as const;
export type Fault = (typeof faults)[number];

export interface BadNetwork {
  /** Of the app, with its last slash. */
  readonly address: string;
  /** From now on the file at `path` (below the app's folder) is given wrongly; null makes all right again. */
  spoil(path: string | null, fault?: Fault): void;
  /** The host has another version from now on. */
  serve(directory: string): void;
  /** Headers that the host adds to each answer. */
  addHeaders(headers: Readonly<Record<string, string>>): void;
  close(): Promise<void>;
}

export interface BadNetworkOptions {
  readonly directory: string;
  /** What "other version" takes files from. */
  readonly other: string;
  readonly basePath?: string;
}

const portal = '<!doctype html><title>Welcome</title><p>Accept our terms to go on.</p>';

export async function startBadNetwork(options: BadNetworkOptions): Promise<BadNetwork> {
  const { basePath = '/' } = options;
  let inner = createStaticServer({ directory: options.directory, basePath });
  let { directory } = options;
  let spoilt: { readonly path: string; readonly fault: Fault } | null = null;
  let headers: Readonly<Record<string, string>> = {};

  const server = createStaticServer({ directory, basePath });
  server.removeAllListeners('request');
  server.on('request', (request, response) => {
    const path = (request.url ?? '/').split('?', 1)[0]?.slice(basePath.length) || 'index.html';
    for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
    if (spoilt?.path === path && existsSync(join(directory, path))) {
      answerWrongly(response, spoilt.fault, join(directory, path), options.other);
    } else {
      inner.emit('request', request, response);
    }
  });
  const port = await listenOn(server, 0, 'localhost');
  return {
    address: `http://localhost:${port}${basePath}`,
    spoil(path, fault = 'portal') {
      spoilt = path === null ? null : { path, fault };
    },
    serve(next) {
      directory = next;
      inner = createStaticServer({ directory, basePath });
    },
    addHeaders(more) {
      headers = more;
    },
    close() {
      server.closeAllConnections();
      return new Promise((done) => {
        server.close(() => done());
      });
    },
  };
}

function answerWrongly(response: ServerResponse, fault: Fault, file: string, other: string): void {
  const body = readFileSync(file);
  const half = body.subarray(0, Math.floor(body.length / 2));
  const asItIs = {
    'Content-Type': typeOf[extname(file)] ?? 'application/octet-stream',
    // As a host sends them: what has a hash in its name is kept by the browser, wrong or not.
    'Cache-Control': file.includes('assets') ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
  switch (fault) {
    case 'status 500':
      response.writeHead(500, { 'Content-Type': 'text/plain' }).end('Out of order');
      return;
    case 'honest cut':
      response.writeHead(200, { ...asItIs, 'Content-Length': body.length });
      response.write(half, () => response.destroy());
      return;
    case 'silent cut':
      response.writeHead(200, asItIs).end(half);
      return;
    case 'portal':
      response.writeHead(200, { 'Content-Type': 'text/html' }).end(portal);
      return;
    case 'other version':
      response.writeHead(200, asItIs).end(counterpart(file, body, other));
  }
}

const typeOf: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.svg': 'image/svg+xml',
};

/** The same file of another version; one that is alike there gets a line more. */
function counterpart(file: string, body: Buffer, other: string): Buffer {
  // Names of built files end in a hash of eight signs.
  const stem = (name: string): string => name.replace(/-[\w-]{8}(\.\w+)$/, '$1');
  const found = readdirSync(other, { recursive: true, encoding: 'utf8' })
    .filter((name) => stem(basename(name)) === stem(basename(file)))
    .map((name) => readFileSync(join(other, name)))
    .find((bytes) => !bytes.equals(body));
  return found ?? Buffer.concat([body, Buffer.from('\n')]);
}
