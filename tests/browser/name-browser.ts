// Before the first browser test: finds the browser when CHROME_PATH does not name it (npm test has named it already).
import { findBrowser } from '../../src/command-line/find-browser.mjs';

export async function setup(): Promise<void> {
  const browser = await findBrowser();
  if (browser.kind === 'none') throw new Error(browser.why);
  process.env['CHROME_PATH'] = browser.path;
}
