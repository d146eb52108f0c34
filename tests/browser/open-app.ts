// Opens the production build in a real Chromium whose microphone plays a sound made by the test.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';
import { distFolder } from '../build/built-files';
import { type FakeMicrophone, microphoneFlags, quietFlags } from './browser-flags';
import { type HeardAttributes, recordReadout } from './readout-history';

export interface AppOptions extends FakeMicrophone {
  readonly theme?: 'light' | 'dark';
  readonly viewport?: { readonly width: number; readonly height: number };
  /** Runs in the page before the app, to stand in for hardware that a test machine cannot lose. */
  readonly beforeApp?: (() => void) | readonly (() => void)[];
  /** Only to inject a checker; the policy itself is tested by all other tests. */
  readonly bypassPolicy?: boolean;
  /** For the browser, beside the usual ones. */
  readonly flags?: readonly string[];
  /** A process of its own with a profile on the disk: for what is about the disk, and for large files. */
  readonly ownBrowser?: boolean;
  /** Folder of the host that holds the app. */
  readonly basePath?: string;
  /** Another build than dist/. */
  readonly directory?: string;
  /** The app is served already, at this address (with its last slash); its certificate is not asked who signed it. */
  readonly address?: string;
}

export interface OpenedApp {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly address: string;
  /** Errors of the console, uncaught exceptions, and requests that left the app's own origin. */
  readonly problems: readonly string[];
  /** Every different state the readout has shown so far. */
  history(): Promise<readonly HeardAttributes[]>;
  stopServer(): Promise<void>;
  close(): Promise<void>;
}

/** Serves dist/ and opens it at `route` ("#/listen"). Close it in the same test. */
export async function openApp(route: string, options: AppOptions = {}): Promise<OpenedApp> {
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-browser-'));
  const basePath = options.basePath ?? '/';
  const server = createStaticServer({ directory: options.directory ?? distFolder, basePath });
  const address =
    options.address ?? `http://localhost:${await listenOn(server, 0, 'localhost')}${basePath}`;
  const { origin } = new URL(address);

  const context = await openContext(folder, options);
  // An upper bound, for slow machines: whatever is waited for ends the waiting.
  context.setDefaultTimeout(30_000);
  const problems: string[] = [];
  context.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(`${origin}/`) && !/^(?:blob|data):/.test(url)) {
      problems.push(`request to ${url}`);
    }
  });
  context.on('weberror', (error) => problems.push(`exception: ${error.error().message}`));
  context.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  // Before the scripts: its first page, which is empty, has no microphone and no storage.
  const page = context.pages()[0] ?? (await context.newPage());
  await context.addInitScript(recordReadout);
  for (const script of [options.beforeApp ?? []].flat()) await context.addInitScript(script);

  await page.goto(`${address}${route}`);
  await page.locator('main').waitFor();

  const stopServer = async () => {
    server.closeAllConnections();
    await new Promise<void>((done) => {
      server.close(() => done());
    });
  };
  return {
    page,
    context,
    address,
    problems,
    history: () => page.evaluate(() => window.readoutHistory ?? []),
    stopServer,
    close: async () => {
      await context.close();
      await stopServer();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A context of the shared browser where there is one and it will do, otherwise a browser of its own. */
async function openContext(folder: string, options: AppOptions): Promise<BrowserContext> {
  const usual = {
    viewport: options.viewport ?? { width: 360, height: 640 },
    colorScheme: options.theme ?? 'dark',
    bypassCSP: options.bypassPolicy ?? false,
    ignoreHTTPSErrors: options.address !== undefined,
    ...(options.permission === 'denied' ? {} : { permissions: ['microphone'] }),
  };
  const { sound, permission, flags, ownBrowser = false } = options;
  const shared = process.env['SHARED_BROWSER'];
  if (shared && !sound && permission !== 'denied' && !flags && !ownBrowser) {
    connected ??= chromium.connect(shared);
    return (await connected).newContext(usual);
  }
  const executablePath = process.env['CHROME_PATH'];
  if (!executablePath) throw new Error('CHROME_PATH must name a Chrome or Chromium: use npm test.');
  return chromium.launchPersistentContext(join(folder, 'profile'), {
    ...usual,
    executablePath,
    headless: true,
    args: [...microphoneFlags(folder, options), ...quietFlags, ...(flags ?? [])],
  });
}

/** The connection of this process to the shared browser; it ends with the process. */
let connected: Promise<Browser> | null = null;
