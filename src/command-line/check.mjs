// `npm run check`: format, lint, types and unit tests, quick enough to run all the time.
import { checkSource, startRun } from './test-run.mjs';

/** Quick enough to run all the time (own choice). */
const targetSeconds = 60;

const run = startRun(targetSeconds);
await checkSource(run);
run.end(0);
