// Where browsers are on this computer, and how one gets there.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run, runScript } from './run-tool.mjs';

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

/** The computer that runs this. @returns {import('./find-browser.mjs').Machine} */
export function thisMachine() {
  return {
    chromePath: process.env['CHROME_PATH'],
    places: async () => {
      const { chromium } = await import('playwright-core');
      return [...namesOnPath.flatMap(onPath), ...usualPlaces, chromium.executablePath()];
    },
    starts,
    download: () =>
      runScript('playwright-core/cli.js', ['install', 'chromium'], {
        PLAYWRIGHT_DOWNLOAD_CONNECTION_TIMEOUT: '15000',
      }),
    installPackage:
      process.getuid?.() === 0 && onPath('apt-get').length > 0 ? installWithApt : null,
  };
}

async function installWithApt() {
  await run('apt-get', ['update']);
  await run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], {
    DEBIAN_FRONTEND: 'noninteractive',
  });
}

/** All programs of this name, first come first. @param {string} name */
const onPath = (name) =>
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .map((folder) => join(folder, name))
    .filter((path) => existsSync(path));

/**
 * A file that is there may still be a stub or lack its libraries, so ask for its version.
 * On Windows that question would open a window instead.
 * @param {string} path
 */
export const starts = (path) =>
  existsSync(path) &&
  (process.platform === 'win32' ||
    spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 60_000 }).status === 0);
