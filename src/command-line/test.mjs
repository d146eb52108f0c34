// `npm test`: everything that must hold, from a fresh clone. Stops at the first step that fails, with its exit code.
import { findBrowser } from './find-browser.mjs';
import { installPackages, runScript, say } from './run-tool.mjs';
import { checkSource, startRun } from './test-run.mjs';

const targetSeconds = 480;

const packages = await installPackages();
if (packages) {
  say('Stopped: the packages could not be installed.');
  process.exit(packages);
}

const run = startRun(targetSeconds);
await checkSource(run);
await run.step('build', () => runScript('vite/bin/vite.js', ['build']));
await run.step('tests of the build', () => run.runTests(['build']));
let browserPath = '';
await run.step('finding a browser', async () => {
  const browser = await findBrowser();
  if (browser.kind === 'none') {
    say(browser.why);
    return 1;
  }
  say(`Browser: ${browser.path}`);
  browserPath = browser.path;
  return 0;
});
await run.step('browser tests without sound', () =>
  run.runTests(['browser'], { CHROME_PATH: browserPath }),
);
// The microphone's sound goes on in real time and leaves half of the processors idle. What runs behind it gets only
// what the audio threads leave: a starved one loses samples.
await run.step('browser tests with sound, over slow unit tests', () =>
  run.runTestsOver(['browser-sound', 'browser-alone'], ['unit-slow'], { CHROME_PATH: browserPath }),
);
run.end(0);
