// How far the suggestions alone bring a simulated note. RUNS sets how many pans (100), FIRST the seed of the
// first (1). Prints a table; never fails.
import { test } from 'vitest';
import { toldResponse } from '../domain/advice/told-response';
import { type Plant, type TunedNote, tuneByAdvice } from '../domain/advice/tune-by-advice';

const { RUNS = '100', FIRST = '1' } = process.env;
const count = Number(RUNS);
const first = Number(FIRST);

/** Fundamental against its target, octave and third against the own fundamental; the second reads all three against fixed targets. */
const plants: readonly (readonly [name: string, plant: Plant])[] = [
  ['−12, −8, +3 against the own fundamental', [-12, -8, 3]],
  ['−12, −8, +3 against fixed targets', [-12, 4, 15]],
  ['+9, +6, −3 against the own fundamental', [9, 6, -3]],
];

const isHome = (run: TunedNote): boolean => run.isInTune && run.spoiled.length === 0;
const print = (line: string) => process.stdout.write(`${line}\n`);

test.each(plants)('%s', (name, plant) => {
  const runs = Array.from({ length: count }, (_, k) => tuneByAdvice(first + k, plant));
  const number = (of: (run: TunedNote) => boolean) => runs.filter(of).length;
  const mean = runs.reduce((sum, { sets }) => sum + sets, 0) / count;
  const ends = new Map<string, number>();
  for (const { last } of runs) {
    const end = last.kind === 'blows' ? 'sets used up' : last.why.kind;
    ends.set(end, (ends.get(end) ?? 0) + 1);
  }
  const told = Array.from({ length: count }, (_, k) => {
    const response = toldResponse(first + k);
    return tuneByAdvice(first + k, plant, () => response);
  });
  print('');
  print(`${name}, ${count} pans from ${first}`);
  print(`  in tune within 12 sets, no neighbour out  ${number(isHome)}  (target 95 %)`);
  print(
    `  with a neighbour out                      ${number(({ spoiled }) => spoiled.length > 0)}`,
  );
  print(
    `  worst partial at some time > 5 c worse    ${number((run) => run.worseThanBefore > 5)}  (target 1 %)`,
  );
  print(`  some partial at some time > 5 c worse     ${number((run) => run.partialWorse > 5)}`);
  print(`  the bound: home when told the response   ${told.filter(isHome).length}`);
  print(`  sets of blows, mean                       ${mean.toFixed(1)}`);
  print(`  ended with  ${[...ends].map(([end, times]) => `${end} ${times}`).join(', ')}`);
});
