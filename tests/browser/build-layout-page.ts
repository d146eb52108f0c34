// Builds the page that shows layouts alone.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

export interface BuiltPage {
  readonly directory: string;
  remove(): void;
}

/** Builds tests/browser/layout-page into a folder of its own. */
export async function buildLayoutPage(): Promise<BuiltPage> {
  const directory = mkdtempSync(join(tmpdir(), 'ringwright-layout-page-'));
  await build({
    configFile: false,
    root: fileURLToPath(new URL('./layout-page', import.meta.url)),
    base: './',
    logLevel: 'error',
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: { outDir: directory, emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0 },
  });
  return { directory, remove: () => rmSync(directory, { recursive: true, force: true }) };
}
