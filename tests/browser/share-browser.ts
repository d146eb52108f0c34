// Before the silent browser tests: one Chromium for all of them, of which every test gets a context of its own.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { microphoneFlags, quietFlags } from './browser-flags';
import { setup as nameBrowser } from './name-browser';

/** Vitest calls what this resolves to after the last test. */
export async function setup(): Promise<() => Promise<void>> {
  await nameBrowser();
  const executablePath = process.env['CHROME_PATH'];
  if (!executablePath) throw new Error('no browser was named');
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-shared-browser-'));
  const server = await chromium.launchServer({
    executablePath,
    headless: true,
    args: [...microphoneFlags(folder, {}), ...quietFlags],
  });
  process.env['SHARED_BROWSER'] = server.wsEndpoint();
  return async () => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  };
}
