// `npm run engines [-- --readme] [-- --only=Firefox]`: the app in Chromium, Firefox and WebKit with a real microphone path.
// Exit code: 0 all went well, 1 something failed, 2 this machine cannot have the engines.
import { join } from 'node:path';
import { readyPackages } from './engine-packages.mjs';
import { findBrowser } from './find-browser.mjs';
import { installPackages, projectFolder, say } from './run-tool.mjs';

const failed = await installPackages();
if (failed) process.exit(1);

const packages = await readyPackages();
if (packages.kind !== 'ready') {
  say(packages.why);
  process.exit(packages.kind === 'elsewhere' ? 2 : 1);
}
const browser = await findBrowser();
if (browser.kind === 'none') {
  say(browser.why);
  process.exit(1);
}

const { runnerImport } = await import('vite');
/**
 * The same as in tests/engines/walk-engines.ts, which this room cannot import.
 * @typedef {object} WalkOptions
 * @property {string} projectFolder
 * @property {string} chromium
 * @property {readonly string[]} only
 * @property {boolean} intoReadme
 * @property {(line: string) => void} say
 */
/** @type {{ module: { walkEngines(options: WalkOptions): Promise<number> } }} */
const { module } = await runnerImport(join(projectFolder, 'tests/engines/walk-engines.ts'), {
  configFile: false,
  envDir: false,
  root: projectFolder,
  logLevel: 'error',
});
const words = process.argv.slice(2);
const code = await module.walkEngines({
  projectFolder,
  chromium: browser.path,
  only: words.flatMap((word) => /^--only=(.+)$/.exec(word)?.[1] ?? []),
  intoReadme: words.includes('--readme'),
  say,
});
process.exitCode = code;
// In case a browser that was given up still holds a connection open.
setTimeout(() => process.exit(code), 5000).unref();
