// Builds the test page around the store and serves it: the same code as in the app, compiled the same way.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';

export interface ServedStorePage {
  readonly address: string;
  /** The app at the same origin, so that both have the same database; only if asked for. */
  readonly appAddress: string;
  close(): Promise<void>;
}

export interface StorePageOptions {
  /** Any free one where it is not named. */
  readonly port?: number;
  /** A build of the app to serve beside the page. */
  readonly app?: string;
}

/** Builds the page into a folder of its own, never into dist/, and serves it. */
export async function serveStorePage({
  port: wantedPort = 0,
  app,
}: StorePageOptions = {}): Promise<ServedStorePage> {
  const directory = mkdtempSync(join(tmpdir(), 'ringwright-store-page-'));
  await build({
    configFile: false,
    logLevel: 'error',
    root: join(import.meta.dirname, 'store-page'),
    base: './',
    build: { target: 'es2022', outDir: directory, emptyOutDir: true, minify: false },
  });
  if (app !== undefined) cpSync(app, join(directory, 'app'), { recursive: true });
  const server = createStaticServer({ directory });
  const port = await listenOn(server, wantedPort, 'localhost');
  const address = `http://localhost:${port}/`;
  return {
    address,
    appAddress: `${address}app/`,
    close: async () => {
      server.closeAllConnections();
      await new Promise<void>((done) => {
        server.close(() => done());
      });
      rmSync(directory, { recursive: true, force: true });
    },
  };
}
