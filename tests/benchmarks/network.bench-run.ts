// Every kept file, wrong in five ways, at the first visit and at an update: what the window shows, then and afterwards.
// FILES=worker takes only files whose name fits that pattern, WHEN=update only updates, FIREFOX=/usr/bin/firefox-esr that
// browser instead of Chromium. A short version is in tests/browser.
import { expect, test } from 'vitest';
import { faults } from '../browser/bad-network';
import { openNetworkBench } from '../browser/network-bench';
import { allTrials } from '../browser/network-trial';
import { precachedIn } from '../build/built-files';

const names = new RegExp(process.env['FILES'] ?? '');
const only = process.env['WHEN'];
const whens = (['first visit', 'update'] as const).filter((when) => !only || when === only);

/** The service worker itself can be given wrongly too. */
const filesOf = (directory: string): readonly string[] =>
  [...precachedIn(directory), 'sw.js'].filter((path) => names.test(path));

test('a network that gives wrong answers', async () => {
  const begun = performance.now();
  const bench = await openNetworkBench(process.env['FIREFOX']);
  const troubled: string[] = [];
  let done = 0;
  const counts = new Map<string, { trials: number; troubles: number }>();
  try {
    for (const when of whens) {
      const { first, next } = bench.versions;
      const same = new Set(when === 'update' ? precachedIn(first) : []);
      // A file that both versions have is not fetched again, so the network cannot spoil it then.
      const files = filesOf(when === 'update' ? next : first).filter(
        (path) => !same.has(path) || /^(?:index\.html|sw\.js)$/.test(path),
      );
      for (const trial of allTrials(files, when)) {
        const troubles = await bench.run(trial);
        const row = `${trial.when}, ${trial.fault}`;
        const count = counts.get(row) ?? { trials: 0, troubles: 0 };
        count.trials += 1;
        count.troubles += troubles.length > 0 ? 1 : 0;
        counts.set(row, count);
        done += 1;
        if (done % 50 === 0) process.stdout.write(`${done} trials, ${troubled.length} troubled\n`);
        if (troubles.length > 0) {
          troubled.push(`${row}, ${trial.path}: ${troubles.join('; ')}`);
          process.stdout.write(`${troubled.at(-1)}\n`);
        }
      }
    }
  } finally {
    await bench.close();
  }
  const rows = whens.flatMap((when) =>
    faults.map((fault) => {
      const { trials = 0, troubles = 0 } = counts.get(`${when}, ${fault}`) ?? {};
      return `${when.padEnd(14)}${fault.padEnd(16)}${String(trials).padStart(6)}${String(troubles).padStart(10)}`;
    }),
  );
  process.stdout.write(
    `\n${'at'.padEnd(14)}${'wrong answer'.padEnd(16)}${'files'.padStart(6)}${'troubled'.padStart(10)}   target 0\n${rows.join('\n')}\n${((performance.now() - begun) / 60_000).toFixed(1)} minutes\n`,
  );
  expect(done).toBeGreaterThan(0);
  expect(troubled).toEqual([]);
});
