// Finds a Chrome or Chromium for the browser tests, or installs one.
import { say } from './run-tool.mjs';
import { thisMachine } from './this-machine.mjs';

/**
 * What the search needs from the computer it runs on.
 * @typedef {object} Machine
 * @property {string | undefined} chromePath value of CHROME_PATH
 * @property {() => Promise<readonly string[]>} places where a browser may be, best first
 * @property {(path: string) => boolean} starts whether a browser starts from this path
 * @property {() => Promise<unknown>} download fetches Playwright's own browser, as far as that is possible
 * @property {(() => Promise<unknown>) | null} installPackage the system's package; null: not allowed or none known
 */

export const noBrowser =
  'The browser tests need Chrome or Chromium, and none could be installed: install one ' +
  '(on Debian: "apt-get install chromium" as root), or name one with CHROME_PATH, and start again.';

/**
 * Path of a browser that starts. Order: CHROME_PATH, installed ones, Playwright's own, the system's package.
 * A CHROME_PATH that does not start is an error, not a reason to take another browser.
 * @param {Machine} [machine]
 * @param {(line: string) => void} [tell]
 * @returns {Promise<{ kind: 'found', path: string } | { kind: 'none', why: string }>}
 */
export async function findBrowser(machine = thisMachine(), tell = say) {
  const named = machine.chromePath;
  if (named) {
    return machine.starts(named)
      ? { kind: 'found', path: named }
      : { kind: 'none', why: `CHROME_PATH names ${named}, but no browser starts there.` };
  }
  const search = async () => (await machine.places()).find(machine.starts);

  const installed = await search();
  if (installed) return { kind: 'found', path: installed };

  tell('No Chrome or Chromium found: installing the one Playwright offers');
  await machine.download();
  const downloaded = await search();
  if (downloaded) return { kind: 'found', path: downloaded };

  if (machine.installPackage) {
    tell("That did not work: installing the system's chromium package");
    await machine.installPackage();
    const packaged = await search();
    if (packaged) return { kind: 'found', path: packaged };
  }
  return { kind: 'none', why: noBrowser };
}
