// A run of steps: stops at the first one that fails, with its exit code, and says at the end how long each took.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { projectFolder, runScript, runScriptBehind, say } from './run-tool.mjs';
import { timeReport } from './time-report.mjs';

const reports = join(projectFolder, 'node_modules', '.cache', 'test-reports');

/** @param {number} targetSeconds for all steps together, on two idle cores */
export function startRun(targetSeconds) {
  let passed = 0;
  let failed = 0;
  /** @type {import('./time-report.mjs').Timed[]} */
  const steps = [];
  /** @type {import('./time-report.mjs').FileResult[]} */
  const files = [];

  /** @param {number} code */
  function end(code) {
    say('');
    for (const line of timeReport(steps, files, targetSeconds)) say(line);
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
    const began = performance.now();
    const code = await work();
    steps.push({ name, seconds: (performance.now() - began) / 1000 });
    if (code === 0) return;
    // A step that is not a list of tests, or that broke down before it could count, counts as one failure.
    if (failed === failedBefore) failed += 1;
    say(`\nStopped: ${name} failed.`);
    end(code);
  }

  /** @param {readonly string[]} projects names of vitest projects */
  function prepare(projects) {
    mkdirSync(reports, { recursive: true });
    const report = join(reports, `${projects.join('-')}.json`);
    rmSync(report, { force: true });
    const parameters = [
      'run',
      ...projects.flatMap((project) => ['--project', project]),
      '--reporter=default',
      '--reporter=json',
      `--outputFile=${report}`,
    ];
    return { report, parameters };
  }

  /**
   * Counts what the report holds; returns an exit code: not 0 either where a test did not run.
   * @param {number} code
   * @param {string} report
   */
  function counted(code, report) {
    if (!existsSync(report)) return code || 1;
    const counts = JSON.parse(readFileSync(report, 'utf8'));
    passed += counts.numPassedTests;
    failed += counts.numFailedTests;
    for (const file of counts.testResults) {
      files.push({ ...file, name: relative(projectFolder, file.name) });
    }
    const skipped = counts.numPendingTests + counts.numTodoTests;
    if (skipped > 0) say(`${skipped} of these tests did not run: nothing is skipped here.`);
    return code || (skipped > 0 ? 1 : 0);
  }

  /**
   * Resolves to an exit code.
   * @param {readonly string[]} projects names of vitest projects
   * @param {Readonly<Record<string, string>>} [environment]
   */
  async function runTests(projects, environment) {
    const { report, parameters } = prepare(projects);
    return counted(await runScript('vitest/vitest.mjs', parameters, environment), report);
  }

  /**
   * Two lists of tests at once: the second one has what the first one leaves of the processors. Resolves to an exit
   * code.
   * @param {readonly string[]} projects names of vitest projects
   * @param {readonly string[]} behind names of vitest projects
   * @param {Readonly<Record<string, string>>} [environment]
   */
  async function runTestsOver(projects, behind, environment) {
    const { report, parameters } = prepare(behind);
    const other = runScriptBehind('vitest/vitest.mjs', parameters, environment);
    const code = await runTests(projects, environment);
    const otherCode = await other.exitCode;
    other.show();
    const counts = counted(otherCode, report);
    return code || counts;
  }

  return { step, runTests, runTestsOver, end };
}

/** What is checked first of all, here and by `npm run check`. @param {ReturnType<typeof startRun>} run */
export async function checkSource({ step, runTests }) {
  await step('format and lint', () => runScript('@biomejs/biome/bin/biome', ['check', '.']));
  await step('types', () => runScript('typescript/bin/tsc', ['-b']));
  await step('unit tests', () => runTests(['unit', 'unit-alone']));
}
