// 200 kills of the browser during continuous saving: how much that was said to be kept is missing afterwards.
// KILLS sets another number. Prints its counts; a short version with the same code is in tests/browser.
import { expect, test } from 'vitest';
import { killWhileSaving } from '../browser/kill-while-saving';

const kills = Number(process.env['KILLS'] ?? 200);
const seed = 200;

test('killed while saving', async () => {
  const begun = performance.now();
  const { acknowledged, found, foundAtTheEnd } = await killWhileSaving(kills, seed, (found) => {
    const latest = found.at(-1);
    const isBad = latest !== undefined && latest.lost + latest.torn > 0;
    if (found.length % 20 === 0 || isBad) {
      process.stdout.write(`${found.length} kills; after the latest ${JSON.stringify(latest)}\n`);
    }
  });
  const sum = (counts: readonly number[]) => counts.reduce((total, count) => total + count, 0);
  const line = (name: string, count: number | string) => `${name.padEnd(44)}${count}`;
  const lost = sum(foundAtTheEnd.map((each) => each.lost));
  const torn = sum(foundAtTheEnd.map((each) => each.torn));
  process.stdout.write(
    `${[
      '',
      line('kills (SIGKILL of the whole browser)', kills),
      line('savings acknowledged before a kill', sum(acknowledged)),
      line(
        'fewest and most before one kill',
        `${Math.min(...acknowledged)} … ${Math.max(...acknowledged)}`,
      ),
      line('found whole after the last kill', sum(foundAtTheEnd.map((each) => each.whole))),
      line('lost', lost),
      line('torn', torn),
      line('minutes', ((performance.now() - begun) / 60_000).toFixed(1)),
      '(a saving: a reading, its mark and its sound, over three stores and the cards, strict durability;',
      ' a killed process is not a power cut)',
      '',
    ].join('\n')}\n`,
  );
  expect(acknowledged).toHaveLength(kills);
  expect(Math.min(...acknowledged)).toBeGreaterThan(0);
  for (const each of [...found, ...foundAtTheEnd]) expect(each).toMatchObject({ lost: 0, torn: 0 });
});
