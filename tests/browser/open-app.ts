// Opens the production build in a real Chromium whose microphone plays a sound made by the test.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';
import { distFolder } from '../build/built-files';
import { floatWav } from '../synthetic-sounds/float-wav';
import { type HeardAttributes, recordReadout } from './readout-history';

export interface AppOptions {
  /** What the microphone hears from the moment it is opened. */
  readonly sound?: { readonly samples: Float32Array; readonly sampleRate: number };
  /** `denied`: the browser's own refusal. */
  readonly permission?: 'granted' | 'denied';
  readonly theme?: 'light' | 'dark';
  readonly viewport?: { readonly width: number; readonly height: number };
  /** Runs in the page before the app, to stand in for hardware that a test machine cannot lose. */
  readonly beforeApp?: (() => void) | readonly (() => void)[];
  /** Only to inject a checker; the policy itself is tested by all other tests. */
  readonly bypassPolicy?: boolean;
  /** For the browser, beside the usual ones. */
  readonly flags?: readonly string[];
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
  const executablePath = process.env['CHROME_PATH'];
  if (!executablePath) throw new Error('CHROME_PATH must name a Chrome or Chromium: use npm test.');
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-browser-'));
  const basePath = options.basePath ?? '/';
  const server = createStaticServer({ directory: options.directory ?? distFolder, basePath });
  const address =
    options.address ?? `http://localhost:${await listenOn(server, 0, 'localhost')}${basePath}`;
  const { origin } = new URL(address);

  const context = await chromium.launchPersistentContext(join(folder, 'profile'), {
    executablePath,
    headless: true,
    args: [...microphoneFlags(folder, options), ...quietFlags, ...(options.flags ?? [])],
    viewport: options.viewport ?? { width: 360, height: 640 },
    colorScheme: options.theme ?? 'dark',
    bypassCSP: options.bypassPolicy ?? false,
    ignoreHTTPSErrors: options.address !== undefined,
    ...(options.permission === 'denied' ? {} : { permissions: ['microphone'] }),
  });
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
  await context.addInitScript(recordReadout);
  for (const script of [options.beforeApp ?? []].flat()) await context.addInitScript(script);

  const page = context.pages()[0] ?? (await context.newPage());
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

function microphoneFlags(folder: string, { sound, permission }: AppOptions): readonly string[] {
  const file = join(folder, 'microphone.wav');
  const { samples, sampleRate } = sound ?? { samples: new Float32Array(480), sampleRate: 48_000 };
  // Without looping Chromium repeats the last 10 ms for ever: they must be silent.
  const tail = new Float32Array(samples.length + sampleRate);
  tail.set(samples);
  writeFileSync(file, floatWav(tail, sampleRate));
  return [
    '--use-fake-device-for-media-stream',
    permission === 'denied'
      ? '--use-fake-ui-for-media-stream=deny'
      : '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${file}%noloop`,
  ];
}

export const quietFlags = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  // Chromium's sandbox does not start for root, as in a container.
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
];
