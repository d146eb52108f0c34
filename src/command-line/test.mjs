// `npm test`: everything that must hold, from a fresh clone. Stops at the first step that fails, with its exit code.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser } from './find-browser.mjs';
import { installPackages, projectFolder, runScript, say } from './run-tool.mjs';

const reports = join(projectFolder, 'node_modules', '.cache', 'test-reports');
let passed = 0;
let failed = 0;

/** @param {number} code */
function end(code) {
  say(`${passed} passed, ${failed} failed`);
  process.exit(code);
}

/**
 * @param {string} name
 * @param {() => Promise<number>} work resolves to an exit code
 */
async function step(name, work) {
  say(`\n== ${name}`);
  const failedBefore = failed;
  const code = await work();
  if (code === 0) return;
  // A step that is no list of tests, or one that broke down before it could count, is one failure.
  if (failed === failedBefore) failed += 1;
  say(`\nStopped: ${name} failed.`);
  end(code);
}

/**
 * @param {string} project name of a vitest project
 * @param {Readonly<Record<string, string>>} [environment]
 */
async function runTests(project, environment) {
  const report = join(reports, `${project}.json`);
  rmSync(report, { force: true });
  const code = await runScript(
    'vitest/vitest.mjs',
    [
      'run',
      '--project',
      project,
      '--reporter=default',
      '--reporter=json',
      `--outputFile=${report}`,
    ],
    environment,
  );
  if (!existsSync(report)) return code || 1;
  const counts = JSON.parse(readFileSync(report, 'utf8'));
  passed += counts.numPassedTests;
  failed += counts.numFailedTests;
  const skipped = counts.numPendingTests + counts.numTodoTests;
  if (skipped > 0) say(`${skipped} of these tests did not run: nothing is skipped here.`);
  return code || (skipped > 0 ? 1 : 0);
}

const packages = await installPackages();
if (packages) {
  say('Stopped: the packages could not be installed.');
  process.exit(packages);
}
mkdirSync(reports, { recursive: true });

await step('format and lint', () => runScript('@biomejs/biome/bin/biome', ['check', '.']));
await step('types', () => runScript('typescript/bin/tsc', ['-b']));
await step('unit tests', () => runTests('unit'));
await step('build', () => runScript('vite/bin/vite.js', ['build']));
await step('tests of the build', () => runTests('build'));
await step('browser tests', async () => {
  const browser = await findBrowser();
  if (browser.kind === 'none') {
    say(browser.why);
    return 1;
  }
  say(`Browser: ${browser.path}`);
  return runTests('browser', { CHROME_PATH: browser.path });
});
end(0);
