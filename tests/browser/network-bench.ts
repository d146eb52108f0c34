// Runs trials of a wrong network, each in a profile of its own, and says what went wrong in which.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { distFolder } from '../build/built-files';
import { type BadNetwork, startBadNetwork } from './bad-network';
import { quietFlags } from './browser-flags';
import {
  type Trial,
  type Troubles,
  tryFirstVisit,
  tryUpdate,
  type Versions,
} from './network-trial';
import { buildOtherVersion } from './next-version';

export interface NetworkBench {
  readonly versions: Versions;
  run(trial: Trial): Promise<Troubles>;
  close(): Promise<void>;
}

/** Builds another version beside dist/ and starts a browser. Close it in the same test. */
export async function openNetworkBench(): Promise<NetworkBench> {
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-network-'));
  const next = join(folder, 'next');
  await buildOtherVersion(next);
  const versions = { first: distFolder, next };
  const browser = await launch();
  return {
    versions,
    async run(trial) {
      // A name of its own: nothing that an earlier trial has left in the browser can help this one.
      const network = await startBadNetwork({
        directory: versions.first,
        other: trial.when === 'update' ? versions.first : versions.next,
      });
      try {
        return await runIn(browser, network, versions, trial);
      } finally {
        await network.close();
      }
    },
    async close() {
      await browser.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function runIn(
  browser: Browser,
  network: BadNetwork,
  versions: Versions,
  trial: Trial,
): Promise<Troubles> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 640 },
    permissions: ['microphone'],
  });
  try {
    return await (trial.when === 'update' ? tryUpdate : tryFirstVisit)(
      context,
      network,
      versions,
      trial,
    );
  } catch (error) {
    // Something that had to come did not come.
    const [line = ''] = (error instanceof Error ? error.message : String(error)).split('\n');
    return [`stopped: ${line}`];
  } finally {
    await context.close();
  }
}

function launch(): Promise<Browser> {
  const executablePath = process.env['CHROME_PATH'];
  if (!executablePath) throw new Error('CHROME_PATH must name a Chrome or Chromium: use npm test.');
  return chromium.launch({ executablePath, headless: true, args: [...quietFlags] });
}
