// Builds the test page around the store and serves it: the same code as in the app, compiled the same way.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';

export interface ServedStorePage {
  readonly address: string;
  close(): Promise<void>;
}

/** Builds the page into a folder of its own, never into dist/, and serves it on `wantedPort`, or on a free one. */
export async function serveStorePage(wantedPort = 0): Promise<ServedStorePage> {
  const directory = mkdtempSync(join(tmpdir(), 'ringwright-store-page-'));
  await build({
    configFile: false,
    logLevel: 'error',
    root: join(import.meta.dirname, 'store-page'),
    base: './',
    build: { target: 'es2022', outDir: directory, emptyOutDir: true, minify: false },
  });
  const server = createStaticServer({ directory });
  const port = await listenOn(server, wantedPort, 'localhost');
  return {
    address: `http://localhost:${port}/`,
    close: async () => {
      server.closeAllConnections();
      await new Promise<void>((done) => {
        server.close(() => done());
      });
      rmSync(directory, { recursive: true, force: true });
    },
  };
}
