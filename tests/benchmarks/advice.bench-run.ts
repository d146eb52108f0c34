// How far the suggestions alone bring a simulated note, for each of the fourteen faults on which tuners agree. RUNS
// sets how many pans for each (100), FIRST the seed of the first (1). Prints a table; never fails.
import { test } from 'vitest';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { againstOwn, fourteenFaults, type KnownFault } from '../domain/advice/fourteen-faults';
import { simpleRule } from '../domain/advice/simple-rule';
import { toldResponse } from '../domain/advice/told-response';
import { type TunedHow, type TunedNote, tuneByAdvice } from '../domain/advice/tune-by-advice';

const { RUNS = '100', FIRST = '1' } = process.env;
const count = Number(RUNS);
const first = Number(FIRST);

const print = (line: string) => process.stdout.write(`${line}\n`);
const isHome = (run: TunedNote): boolean =>
  run.isInTune && run.spoiled.length === 0 && run.partialWorse <= 5;
const share = (part: number, all: number): string =>
  all === 0 ? '–' : `${Math.round((100 * part) / all)} %`;
const mean = (runs: readonly TunedNote[], of: (run: TunedNote) => number): string =>
  (runs.reduce((sum, run) => sum + of(run), 0) / Math.max(1, runs.length)).toFixed(1);

interface Tried {
  readonly runs: readonly TunedNote[];
  readonly simple: readonly TunedNote[];
  readonly told: readonly TunedNote[];
}

function tryOn(known: KnownFault): Tried {
  const each = (how: (seed: number) => TunedHow): readonly TunedNote[] =>
    Array.from({ length: count }, (_, k) => {
      const seed = first + k;
      const plant = againstOwn(known.draw(seededRandom(seed * 991 + 7)));
      return tuneByAdvice(seed, plant, { ...how(seed), isTopNote: known.isTopNote ?? false });
    });
  return {
    runs: each(() => ({})),
    simple: each(() => ({ suggest: simpleRule })),
    told: each((seed) => {
      const response = toldResponse(seed);
      return { know: () => response };
    }),
  };
}

const columns = [
  ['fault', 46],
  ['home', 7],
  ['rule', 7],
  ['bound', 7],
  ['of bound', 9],
  ['worse', 7],
  ['(rule)', 7],
  ['(bound)', 7],
  ['sets', 6],
  ['blows', 6],
  ['out', 5],
  ['on purpose', 10],
] as const;
const row = (cells: readonly string[]): string =>
  cells
    .map((cell, k) => (k === 0 ? cell.padEnd(columns[0][1]) : cell.padStart(columns[k]?.[1] ?? 8)))
    .join(' ');

const totals: { known: KnownFault; tried: Tried }[] = [];

test.each(fourteenFaults.map((known) => [known.name, known] as const))('%s', (name, known) => {
  const tried = tryOn(known);
  totals.push({ known, tried });
  const { runs } = tried;
  if (totals.length === 1) {
    print(
      `\n${count} pans for each fault, from ${first}. Targets: home ≥ 90 % of what the bound mends and ≥ the rule; worse ≤ 1 %; on purpose 0.`,
    );
    print(row(columns.map(([title]) => title)));
  }
  if (known.answer === 'leave' || known.answer === 'professional') {
    const rightly = runs.filter(({ last, sets }) => sets === 0 && last.kind === known.answer);
    print(
      `${name.padEnd(columns[0][1])} not hammered, rightly: ${share(rightly.length, count)} (target 100 %)`,
    );
    return;
  }
  print(row([name, ...cellsOf(tried)]));
  const ends = new Map<string, number>();
  for (const run of runs.filter((each) => !isHome(each))) {
    const why = run.last.kind === 'blows' ? 'sets used up' : run.last.why.kind;
    const end = run.isInTune ? 'worse on the way, or a neighbour out' : why;
    ends.set(end, (ends.get(end) ?? 0) + 1);
  }
  if (ends.size > 0)
    print(`    not home: ${[...ends].map(([end, times]) => `${end} ${times}`).join(', ')}`);
});

test('all that are hammered', () => {
  const hammered = totals.filter(({ known }) => typeof known.answer !== 'string');
  const all = (of: (tried: Tried) => readonly TunedNote[]) =>
    hammered.flatMap(({ tried }) => of(tried));
  const tried: Tried = {
    runs: all(({ runs }) => runs),
    simple: all(({ simple }) => simple),
    told: all(({ told }) => told),
  };
  print(row(['all that are hammered', ...cellsOf(tried)]));
  const worse = tried.runs.flatMap(({ worseBy }) => worseBy ?? []);
  const byTrial = worse.filter((set) => /^[12] light (glancing|middle above)/.test(set));
  print(
    `of ${worse.length} made worse, by one or two light blows of which nobody knows the way: ${byTrial.length}`,
  );
  // A note that nothing of the trade mends on this pan is left alone, or better than it was, and never much worse.
  const hopeless = tried.runs.filter((run, k) => {
    const told = tried.told[k];
    return told !== undefined && !isHome(told) && !isHome(run);
  });
  const left = hopeless.filter(
    ({ last, partialWorse }) => last.kind !== 'blows' && partialWorse <= 5,
  );
  print(
    `of ${hopeless.length} that the bound does not mend either, left alone before harm was done: ${share(left.length, hopeless.length)}`,
  );
});

function cellsOf({ runs, simple, told }: Tried): readonly string[] {
  const all = runs.length;
  const mendable = runs.filter((_, k) => {
    const known = told[k];
    return known !== undefined && isHome(known);
  });
  const number = (of: (run: TunedNote) => boolean, from = runs) => from.filter(of).length;
  const isWorse = (run: TunedNote) => run.partialWorse > 5;
  return [
    share(number(isHome), all),
    share(number(isHome, simple), all),
    share(number(isHome, told), all),
    share(number(isHome, mendable), mendable.length),
    share(number(isWorse), all),
    share(number(isWorse, simple), all),
    share(number(isWorse, told), all),
    mean(runs, ({ sets }) => sets),
    mean(runs, ({ blows }) => blows),
    String(runs.reduce((sum, { movedOut }) => sum + movedOut, 0)),
    String(runs.reduce((sum, { movedOutOnPurpose }) => sum + movedOutOnPurpose, 0)),
  ];
}
