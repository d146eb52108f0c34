// Finds a Chrome or Chromium for the browser tests, or installs one.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run, runScript, say } from './run-tool.mjs';

const namesOnPath = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'chrome.exe',
];

const usualPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((variable) => {
    const folder = process.env[variable];
    return folder ? [join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe')] : [];
  }),
];

/**
 * Path of a browser that starts. Order: CHROME_PATH, installed ones, Playwright's own, a fresh installation.
 * A CHROME_PATH that does not start is an error, not a reason to take another browser.
 * @returns {Promise<{ kind: 'found', path: string } | { kind: 'none', why: string }>}
 */
export async function findBrowser() {
  const named = process.env['CHROME_PATH'];
  if (named) {
    return starts(named)
      ? { kind: 'found', path: named }
      : { kind: 'none', why: `CHROME_PATH names ${named}, but no browser starts there.` };
  }
  const installed = await installedBrowser();
  if (installed) return { kind: 'found', path: installed };

  say('No Chrome or Chromium found: installing the one Playwright offers');
  await runScript('playwright-core/cli.js', ['install', 'chromium'], {
    PLAYWRIGHT_DOWNLOAD_CONNECTION_TIMEOUT: '15000',
  });
  const downloaded = await installedBrowser();
  if (downloaded) return { kind: 'found', path: downloaded };

  if (process.getuid?.() === 0 && onPath('apt-get')) {
    say("That did not work: installing the system's chromium package");
    await run('apt-get', ['update']);
    await run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], {
      DEBIAN_FRONTEND: 'noninteractive',
    });
    const packaged = await installedBrowser();
    if (packaged) return { kind: 'found', path: packaged };
  }
  return {
    kind: 'none',
    why: 'The browser tests need a browser: install Chrome or Chromium, or name one with CHROME_PATH.',
  };
}

async function installedBrowser() {
  const { chromium } = await import('playwright-core');
  return [
    ...namesOnPath.flatMap((name) => onPath(name) ?? []),
    ...usualPlaces,
    chromium.executablePath(),
  ].find(starts);
}

/** @param {string} name */
const onPath = (name) =>
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));

/**
 * A file that is there may still be a stub or lack its libraries, so ask for its version.
 * On Windows that question would open a window instead.
 * @param {string} path
 */
const starts = (path) =>
  existsSync(path) &&
  (process.platform === 'win32' ||
    spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 60_000 }).status === 0);
