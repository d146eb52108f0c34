// One file for the build (Vite), the offline copy (service worker) and the test projects (vitest).
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';
import about from './package.json' with { type: 'json' };
import { offlineCopy } from './src/command-line/build-offline-copy.mjs';
import { webManifest } from './src/command-line/web-manifest.mjs';

const jsx = { runtime: 'automatic', importSource: 'preact' } as const;
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

/** Unit tests that take seconds each. */
const slow = 'tests/**/*.slow.test.ts';

/** Unit tests of which every file needs modules and globals of its own. */
const alone = [
  'tests/advising/**/*.test.ts',
  'tests/analysis/**/*.test.ts',
  'tests/audio/**/*.test.ts',
  'tests/storage/**/*.test.ts',
];

/** A browser test that runs a command which builds dist/. */
const buildsAnew = 'tests/browser/phone.sound.test.ts';

/** What all browser tests have in common. */
const inBrowser = {
  environment: 'node',
  isolate: false,
  // Upper bounds, for slow machines, as in open-app.ts: whatever is waited for ends the waiting.
  expect: { poll: { timeout: 30_000 } },
  testTimeout: 300_000,
  hookTimeout: 300_000,
};

export default defineConfig({
  // Relative, so that dist/ works on any host and in any subfolder.
  base: './',
  oxc: { jsx },
  define: {
    ringwrightVersion: JSON.stringify(about.version),
    // Whole days: two builds of one day are the same.
    ringwrightBuiltAt: String(Math.floor(Date.now() / 86_400_000) * 86_400_000),
  },
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
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src/offline/worker',
      filename: 'service-worker.ts',
      // src/offline registers the worker itself: an injected script would need 'unsafe-inline'.
      injectRegister: null,
      includeManifestIcons: false,
      injectManifest: {
        rollupFormat: 'iife',
        // None: the list of files is put in by offlineCopy(). Workbox's has the MD5 of some files and trusts the
        // names of the others, and the worker checks each by its SHA-256.
        injectionPoint: '',
      },
      integration: {
        // Otherwise it tells of a file that is not in dist/ in the end.
        configureCustomSWViteBuild: (worker) => {
          worker.logLevel = 'error';
        },
      },
      manifest: webManifest,
    }),
    offlineCopy(),
  ],
  test: {
    projects: [
      {
        oxc: { jsx },
        test: {
          // Without isolation: files in one worker share what they load.
          // All three kinds take every core: vitest's own choice leaves one of two idle.
          name: 'unit',
          maxWorkers: '100%',
          environment: 'node',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: [...alone, slow, 'tests/browser/**', 'tests/build/**', 'tests/benchmarks/**'],
          isolate: false,
          testTimeout: 60_000,
        },
      },
      {
        test: {
          // Those that put something in the place of a module or of what the browser gives to all.
          name: 'unit-alone',
          maxWorkers: '100%',
          environment: 'node',
          include: alone,
          exclude: [slow],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          // Many scenes or many strikes in a row: run by `npm test`, not by `npm run check`.
          name: 'unit-slow',
          maxWorkers: '100%',
          environment: 'node',
          include: [slow],
          testTimeout: 120_000,
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
          exclude: [buildsAnew],
          globalSetup: ['tests/browser/name-browser.ts'],
          // After the silent ones, because a starved audio thread loses samples. Two at a time: each takes less than
          // half of a processor.
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
          ...inBrowser,
        },
      },
      {
        test: {
          // Builds dist/ anew, which the others serve.
          name: 'browser-alone',
          include: [buildsAnew],
          globalSetup: ['tests/browser/name-browser.ts'],
          maxWorkers: 1,
          sequence: { groupOrder: 3 },
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
          name: 'bench-files',
          environment: 'node',
          include: ['tests/benchmarks/files.bench-run.ts'],
          testTimeout: 14_400_000,
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
          name: 'bench-network',
          environment: 'node',
          include: ['tests/benchmarks/network.bench-run.ts'],
          globalSetup: ['tests/browser/name-browser.ts'],
          testTimeout: 7_200_000,
        },
      },
      {
        test: {
          name: 'bench-screens',
          environment: 'node',
          include: ['tests/benchmarks/screens.bench-run.ts'],
          globalSetup: ['tests/browser/name-browser.ts'],
          testTimeout: 600_000,
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
          name: 'fit-ear',
          environment: 'node',
          include: ['tests/fitting/ear.fit-run.ts'],
          testTimeout: 3_600_000,
        },
      },
      {
        test: {
          name: 'bench-strikes',
          environment: 'node',
          include: ['tests/benchmarks/strikes.bench-run.ts'],
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
