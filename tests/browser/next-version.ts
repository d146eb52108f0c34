// Another version of the app, as a host has it after an update.
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { vi } from 'vitest';
import { distFolder } from '../build/built-files';

/** Builds the app into `outDir` with one change: the page says that it is the next version. */
export async function buildNextVersion(outDir: string): Promise<void> {
  await buildChanged(
    outDir,
    /src.main\.tsx$/,
    "document.documentElement.dataset.version = 'next';",
  );
}

/**
 * The same, with every script of the app changed, late screens, workers and styles too: no file but pictures and
 * typefaces keeps its name.
 */
export async function buildOtherVersion(outDir: string): Promise<void> {
  await buildChanged(
    outDir,
    /src.main\.tsx$|-screen\.tsx$|\.worklet\.ts$|\.worker\.ts$|make-late-models\.ts$|offline.*\.ts$|practice-pan\.ts$/,
    "globalThis.ringwrightVersion = 'next'; globalThis.document?.documentElement.setAttribute('data-version', 'next');",
  );
}

/** A version that does not start: it ends before it shows anything. */
export async function buildBrokenVersion(outDir: string): Promise<void> {
  await buildChanged(outDir, /src.ui.app\.tsx$/, "throw new Error('This version is broken.');");
}

async function buildChanged(outDir: string, files: RegExp, code: string): Promise<void> {
  const change: Plugin = {
    name: 'next-version',
    transform: (text, id) => (files.test(id.split('?', 1)[0] ?? '') ? `${text}\n${code}` : null),
  };
  // Under NODE_ENV=test Vite would build for development, where the app keeps no offline copy.
  vi.stubEnv('NODE_ENV', 'production');
  await build({
    root: join(distFolder, '..'),
    logLevel: 'silent',
    build: { outDir, emptyOutDir: true },
    plugins: [change],
    worker: { plugins: () => [change] },
  });
  vi.unstubAllEnvs();
}
