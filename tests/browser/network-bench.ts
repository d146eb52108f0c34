// Runs trials of a wrong network, each at an address of its own, and says what went wrong in which.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { distFolder } from '../build/built-files';
import { firefoxEngine } from '../engines/firefox-engine';
import { startBadNetwork } from './bad-network';
import { quietFlags } from './browser-flags';
import {
  type Trial,
  type TrialPage,
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

interface TrialBrowser {
  /** Runs `use` with a window that knows nothing of the address it will open. */
  withPage(use: (page: TrialPage) => Promise<Troubles>): Promise<Troubles>;
  close(): Promise<void>;
}

/** Builds another version beside dist/ and starts Chromium, or the Firefox at `firefox`. Close it in the same test. */
export async function openNetworkBench(firefox?: string): Promise<NetworkBench> {
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-network-'));
  const next = join(folder, 'next');
  await buildOtherVersion(next);
  const versions = { first: distFolder, next };
  const browser = await (firefox ? startFirefox(firefox, folder) : startChromium());
  return {
    versions,
    async run(trial) {
      // An address of its own: nothing that an earlier trial has left in the browser can help this one.
      const network = await startBadNetwork({
        directory: versions.first,
        other: trial.when === 'update' ? versions.first : versions.next,
      });
      const attempt = trial.when === 'update' ? tryUpdate : tryFirstVisit;
      try {
        return await browser.withPage((page) => attempt(page, network, versions, trial));
      } catch (error) {
        const [line = ''] = (error instanceof Error ? error.message : String(error)).split('\n');
        return [`stopped: ${line}`];
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

async function startChromium(): Promise<TrialBrowser> {
  const executablePath = process.env['CHROME_PATH'];
  if (!executablePath) throw new Error('CHROME_PATH must name a Chrome or Chromium: use npm test.');
  const browser = await chromium.launch({ executablePath, headless: true, args: [...quietFlags] });
  return {
    async withPage(use) {
      const context = await browser.newContext({ viewport: { width: 360, height: 640 } });
      const page = await context.newPage();
      try {
        return await use({
          open: async (address) => void (await page.goto(address)),
          evaluate: (expression) => page.evaluate(expression),
        });
      } finally {
        await context.close();
      }
    },
    close: () => browser.close(),
  };
}

/** One window for all trials: what a browser keeps, it keeps by address. */
async function startFirefox(program: string, folder: string): Promise<TrialBrowser> {
  const outbox = join(folder, 'outbox');
  mkdirSync(outbox);
  const browser = await firefoxEngine(program).start({
    environment: {},
    profile: join(folder, 'firefox'),
    outbox,
  });
  return {
    withPage: (use) => use(browser),
    close: () => browser.close(),
  };
}
