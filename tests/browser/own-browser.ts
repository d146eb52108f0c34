// A browser process of the test's own, with a profile that outlives it, so that it can be killed like a phone that dies.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type Browser, type BrowserContext, chromium } from 'playwright-core';
import { ownQuietFlags } from './browser-flags';

export interface OwnBrowser {
  /** The context of the profile. */
  readonly context: BrowserContext;
  /** Ends the browser and all its helper processes at once, without a chance to finish anything. */
  kill(): Promise<void>;
  /** Ends it as a user does: everything is written out and closed first. */
  close(): Promise<void>;
}

/** Starts the browser named by CHROME_PATH with the profile in `profile`. Kill it in the same test. */
export async function startOwnBrowser(
  profile: string,
  flags: readonly string[] = [],
): Promise<OwnBrowser> {
  const executablePath = process.env['CHROME_PATH'];
  if (!executablePath) throw new Error('CHROME_PATH must name a Chrome or Chromium: use npm test.');
  const child = spawn(
    executablePath,
    [
      '--headless=new',
      '--remote-debugging-port=0',
      `--user-data-dir=${profile}`,
      '--disable-gpu',
      ...ownQuietFlags,
      ...flags,
      'about:blank',
    ],
    // A process group of its own, so that its helpers die with it.
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  );
  const hasEnded = () => child.exitCode !== null || child.signalCode !== null;
  const kill = async () => {
    // Never a second time: the number of a process that has ended may be another's by now.
    if (hasEnded()) return;
    const gone = once(child, 'exit');
    killGroup(child);
    await gone;
  };
  try {
    const browser = await chromium.connectOverCDP(await debuggingAddress(child));
    const close = async () => {
      const gone = once(child, 'exit');
      const session = await browser.newBrowserCDPSession();
      await session.send('Browser.close').catch(() => undefined);
      await gone;
    };
    return { context: contextOf(browser), kill, close };
  } catch (error) {
    await kill();
    throw error;
  }
}

function contextOf(browser: Browser): BrowserContext {
  const [context] = browser.contexts();
  if (!context) throw new Error('The browser has no context.');
  return context;
}

/** The address that the browser prints once it can be talked to. */
function debuggingAddress(child: ChildProcess): Promise<string> {
  return new Promise((done, fail) => {
    let said = '';
    child.stderr?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const address = /DevTools listening on (ws:\/\/\S+)/.exec(said)?.[1];
      if (address) done(address);
    });
    child.once('error', fail);
    child.once('exit', (code) => fail(new Error(`The browser ended (${code}): ${said}`)));
  });
}

function killGroup(child: ChildProcess): void {
  if (child.pid === undefined) return;
  try {
    if (process.platform === 'win32') child.kill('SIGKILL');
    else process.kill(-child.pid, 'SIGKILL');
  } catch (error) {
    // Already gone.
    if (!(error instanceof Error && 'code' in error && error.code === 'ESRCH')) throw error;
  }
}
