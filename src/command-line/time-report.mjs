// Says of a test run how long its steps took, which files and tests took longest, and whether that is quick enough.

/**
 * @typedef {{ readonly name: string, readonly seconds: number }} Timed
 * @typedef {object} FileResult as vitest's JSON reporter writes it
 * @property {string} name path of the file
 * @property {readonly { readonly fullName: string, readonly duration?: number | null }[]} assertionResults times in ms
 * @property {number} startTime ms
 * @property {number} endTime ms
 */

/** How many of the slowest files and tests are named (chosen). */
const named = 8;

/** @param {number} seconds */
const inSeconds = (seconds) => `${seconds.toFixed(1).padStart(7)} s`;

/** @param {readonly Timed[]} all */
const slowestOf = (all) =>
  [...all].sort((one, other) => other.seconds - one.seconds).slice(0, named);

/**
 * Lines for the terminal.
 * @param {readonly Timed[]} steps in the order in which they ran
 * @param {readonly FileResult[]} files
 * @param {number} targetSeconds for all steps together, on two idle cores
 * @returns {readonly string[]}
 */
export function timeReport(steps, files, targetSeconds) {
  const whole = steps.reduce((sum, { seconds }) => sum + seconds, 0);
  /** @param {Timed} timed */
  const line = ({ name, seconds }) => `${inSeconds(seconds)}  ${name}`;
  const filesTimed = files.map(({ name, startTime, endTime }) => ({
    name,
    seconds: (endTime - startTime) / 1000,
  }));
  const testsTimed = files.flatMap(({ name, assertionResults }) =>
    assertionResults.map(({ fullName, duration }) => ({
      name: `${fullName} (${name})`,
      seconds: (duration ?? 0) / 1000,
    })),
  );
  const verdict = whole <= targetSeconds ? 'met' : 'missed';
  return [
    'Test files that took longest',
    ...slowestOf(filesTimed).map(line),
    'Tests that took longest',
    ...slowestOf(testsTimed).map(line),
    'Steps',
    ...steps.map(line),
    `${inSeconds(whole)}  together; target on two idle cores ${targetSeconds} s: ${verdict}`,
  ];
}
