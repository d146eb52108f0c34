// One file for the build (Vite), the offline copy (service worker) and the test projects (vitest).
import { build, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import about from './package.json' with { type: 'json' };

const jsx = { runtime: 'automatic', importSource: 'preact' } as const;
const paper = '#17130f';

const receiveScript = 'receive-shared.js';

/** Writes the script that the service worker imports: one plain script, as `importScripts` wants it. */
const scriptOfWorker: Plugin = {
  name: 'script-of-service-worker',
  async generateBundle() {
    const built = await build({
      configFile: false,
      logLevel: 'error',
      build: {
        target: 'es2022',
        write: false,
        lib: {
          entry: 'src/offline/worker/receive-shared.ts',
          formats: ['iife'],
          name: 'receiveShared',
        },
      },
    });
    const [script] = Array.isArray(built) && built[0] ? built[0].output : [];
    if (!script) throw new Error('The script of the service worker was not built.');
    this.emitFile({ type: 'asset', fileName: receiveScript, source: script.code });
  },
};

/** Writes files.json: the names of all that was built, for the page to see whether its offline copy is whole. */
const listOfFiles: Plugin = {
  name: 'list-of-files',
  enforce: 'post',
  generateBundle(_options, bundle) {
    const files = Object.keys(bundle).filter((file) => !file.endsWith('.map'));
    this.emitFile({
      type: 'asset',
      fileName: 'files.json',
      source: JSON.stringify(files.sort()),
    });
  },
};

/**
 * Few scripts instead of one for each set of screens that share something: they pack better, and the first script
 * has to name them all. Higher priority takes a module first; what they import goes with them.
 */
const chunks = [
  // What is there before the first paint.
  { name: 'first', tags: ['$initial' as const], priority: 4 },
  // What the rack waits for, and its cards when they are out of date.
  { name: 'rack-store', test: /src\/storage\/rack\/indexed-db-pan-store\.ts$/, priority: 3 },
  // What was stored of the settings.
  { name: 'restore-settings', test: /src\/domain\/settings\/restore-settings\.ts$/, priority: 2 },
  { name: 'renew-card', test: /src\/state\/rack\/renew-card\.ts$/, priority: 2 },
  // What every other screen waits for.
  { name: 'late-models', test: /src\/make-late-models\.ts$/, priority: 1 },
  { name: 'pan-parts', test: /src\/(ui|domain|state)\//, minShareCount: 2 },
];

/** Unit tests of which every file needs modules and globals of its own. */
const alone = [
  'tests/advising/**/*.test.ts',
  'tests/analysis/**/*.test.ts',
  'tests/audio/**/*.test.ts',
  'tests/storage/**/*.test.ts',
];

/** What all browser tests have in common. */
const inBrowser = {
  environment: 'node',
  // Upper bounds, for slow machines, as in open-app.ts: whatever is waited for ends the waiting.
  expect: { poll: { timeout: 30_000 } },
  testTimeout: 300_000,
  hookTimeout: 300_000,
};

export default defineConfig({
  // Relative, so that dist/ works on any host and in any subfolder.
  base: './',
  oxc: { jsx },
  define: { ringwrightVersion: JSON.stringify(about.version) },
  build: {
    target: 'es2022',
    // The Content-Security-Policy allows files of our own origin only: nothing becomes a data: URL.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { codeSplitting: { groups: chunks } } },
  },
  // Module workers; also what `?worker&url` needs for the capture worklet.
  worker: { format: 'es' },
  plugins: [
    scriptOfWorker,
    listOfFiles,
    VitePWA({
      strategies: 'generateSW',
      registerType: 'prompt',
      // src/offline registers the worker itself: an injected script would need 'unsafe-inline'.
      injectRegister: null,
      includeManifestIcons: false,
      workbox: {
        // The icons are for the phone's own screens, which copy them when the app is installed.
        globPatterns: ['**/*.{js,css,html,svg,woff2,json,txt,wav}'],
        navigateFallback: 'index.html',
        cleanupOutdatedCaches: true,
        // Without it the first page is not controlled although everything is in the cache.
        clientsClaim: true,
        inlineWorkboxRuntime: true,
        importScripts: [receiveScript],
        sourcemap: false,
      },
      manifest: {
        // Fixed for ever: another id is another app to the phone.
        id: '/ringwright',
        name: 'Ringwright',
        short_name: 'Ringwright',
        description: 'Hears a strike on a steelpan and says which partial is flat or sharp.',
        lang: 'en',
        start_url: './',
        scope: './',
        display: 'standalone',
        theme_color: paper,
        background_color: paper,
        icons: [
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
          {
            src: 'icon-maskable-512.png',
            sizes: '512x512',
            type: 'image/png',
            purpose: 'maskable',
          },
        ],
        // As src/offline/waiting-place.ts has it; a test of the build compares the two.
        // Files of this app come as text, as JSON and packed, by whatever name the sending program has for that.
        share_target: {
          action: './receive-shared',
          method: 'POST',
          enctype: 'multipart/form-data',
          params: {
            files: [
              {
                name: 'file',
                accept: [
                  'text/plain',
                  'application/json',
                  'application/gzip',
                  'application/x-gzip',
                  '.txt',
                  '.json',
                  '.gz',
                ],
              },
            ],
          },
        },
        // Computers only; phones have the share sheet. No launch_handler: with focus-existing, Chromium throws away
        // what is shared (WICG/web-app-launch, issue 62).
        file_handlers: [
          {
            action: './#/receive',
            accept: { 'application/json': ['.json'], 'application/gzip': ['.gz'] },
          },
        ],
        shortcuts: [{ name: 'Listen', url: './#/listen' }],
      },
    }),
  ],
  test: {
    projects: [
      {
        oxc: { jsx },
        test: {
          // Without isolation: files in one worker share what they load, which is half of the work.
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: [...alone, 'tests/browser/**', 'tests/build/**', 'tests/benchmarks/**'],
          isolate: false,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          // Those that put something in the place of a module or of what the browser gives to all.
          name: 'unit-alone',
          environment: 'node',
          include: alone,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'build',
          environment: 'node',
          include: ['tests/build/**/*.test.ts'],
        },
      },
      {
        test: {
          // Those that play no sound: two at a time, in one browser.
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: ['tests/browser/**/*.sound.test.ts'],
          globalSetup: ['tests/browser/share-browser.ts'],
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
          ...inBrowser,
        },
      },
      {
        test: {
          name: 'browser-sound',
          include: ['tests/browser/**/*.sound.test.ts'],
          globalSetup: ['tests/browser/name-browser.ts'],
          // Alone, after all others: a starved audio thread loses samples.
          maxWorkers: 1,
          sequence: { groupOrder: 2 },
          ...inBrowser,
        },
      },
      {
        test: {
          name: 'pictures',
          environment: 'node',
          include: ['tests/screenshots/take-pictures.bench-run.ts'],
          globalSetup: ['tests/browser/name-browser.ts'],
          fileParallelism: false,
        },
      },
      {
        test: {
          name: 'bench-latency',
          environment: 'node',
          include: ['tests/benchmarks/latency.bench-run.ts'],
          globalSetup: ['tests/browser/name-browser.ts'],
          fileParallelism: false,
          testTimeout: 600_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'bench-kills',
          environment: 'node',
          include: ['tests/benchmarks/kills.bench-run.ts'],
          globalSetup: ['tests/browser/name-browser.ts'],
          testTimeout: 7_200_000,
        },
      },
      {
        test: {
          name: 'bench-rack',
          environment: 'node',
          include: ['tests/benchmarks/rack.bench-run.ts'],
          globalSetup: ['tests/browser/name-browser.ts'],
          testTimeout: 7_200_000,
        },
      },
      {
        test: {
          name: 'bench-advice',
          environment: 'node',
          include: ['tests/benchmarks/advice.bench-run.ts'],
          testTimeout: 3_600_000,
        },
      },
      {
        test: {
          name: 'bench-ear',
          environment: 'node',
          include: ['tests/benchmarks/ear.bench-run.ts'],
          testTimeout: 3_600_000,
        },
      },
    ],
  },
});
