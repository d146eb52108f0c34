// Fits the ear's two scores and writes their weights: npm run fit:ear. The cut sounds are kept in the machine's
// temporary folder; FRESH=1 makes them anew.
import { test } from 'vitest';
import type { EarWeights } from '../../src/dsp/faults/ear-scores';
import { missingTakes, realTakes } from '../benchmarks/strikes/real-takes';
import { print } from '../benchmarks/strikes/strike-table';
import { drumSounds, missingDrums } from '../sounds/drum-kits';
import { hasSpeech, missingSpeech } from '../sounds/spoken-sentences';
import { realStrikes } from '../synthetic-sounds/real-strike';
import { cutExamples, isCut } from './cut-examples';
import { type SeenExample, seenExamples } from './ear-features';
import { type FittedEar, fitEar, isNamed, questionOf, weightsOf } from './fit-ear';
import { fitExpected, marginOf } from './fit-expected';
import { dot } from './fits';
import {
  bankExamples,
  bassExamples,
  blowExamples,
  drumExamples,
  type Example,
  hammeredExamples,
  hardExamples,
  realExamples,
  sceneExamples,
  speechExamples,
  variedExamples,
} from './strike-data';
import { writeLeftOut, writeWeights } from './write-weights';

/** What is left out together. */
const keys = ['note', 'strength'] as const;
type Key = (typeof keys)[number];

const began = performance.now();
const log = (what: string): void =>
  print(`${((performance.now() - began) / 1000).toFixed(0).padStart(5)} s  ${what}`);

test('fit', async () => {
  const takes = realTakes();
  const drums = isCut('drum') ? [] : await drumSounds();
  if (!takes) throw new Error(missingTakes());
  if (!drums) throw new Error(missingDrums());
  if (!hasSpeech()) throw new Error(missingSpeech);
  const bank = await realStrikes();
  const sources: Record<string, () => Iterable<Example> | Promise<Iterable<Example>>> = {
    real: () => realExamples(takes, 5),
    varied: () => (isCut('varied') ? [] : variedExamples(takes, 12)),
    drum: () => drumExamples(drums, 2),
    speech: () => speechExamples(64),
    blow: () => (isCut('blow') ? [] : blowExamples(220)),
    hammered: () => (isCut('hammered') ? [] : hammeredExamples(150)),
    bank: () => bankExamples(bank, 25),
    bass: () => bassExamples(32),
    hard: () => hardExamples(180),
    scene: () => sceneExamples(120),
  };
  const seen: SeenExample[] = [];
  for (const [name, source] of Object.entries(sources)) {
    if (process.env['ONLY'] && !process.env['ONLY'].includes(name)) continue;
    const made = isCut(name) ? [] : await source();
    const cuts = cutExamples(name, () => made);
    log(`${name}: ${cuts.length} cuts`);
    seen.push(...seenExamples(name, cuts));
    log('  seen');
  }
  const lost = seen.filter(({ hz, right }) => hz !== null && right < 0);
  log(`without their line: ${counted(lost, ({ kind }) => kind)}`);
  const whole = fitEar(seen);
  log('fitted');
  const story: string[] = [];
  const tell = (line: string): void => {
    story.push(line);
    log(line);
  };
  tell(
    `${new Date().toISOString().slice(0, 10)}, ${seen.length} sounds: ${counted(seen, ({ kind }) => kind)}.`,
  );
  const leftOut: LeftOut[] = [];
  for (const key of keys) leftOut.push(...leave(key, seen, whole, tell));
  // The bonus of the expected note is fitted where the score does what it will do to strikes it has never met.
  const expected = fitExpected(leftOut.flatMap(({ margins }) => margins));
  tell(`The expected note is worth ${expected} nepers (margins of left-out strikes).`);
  for (const key of keys) {
    const margins = leftOut.filter((each) => each.key === key).flatMap((each) => each.margins);
    const named = margins.filter((margin) => margin + expected > 0).length;
    tell(
      `With the note expected, each ${key} left out in turn, both looks: ${named} of ${margins.length} named.`,
    );
  }
  judgeBlows(seen, whole, tell);
  writeWeights({ story, ...weightsOf(whole, expected) });
  writeLeftOut(
    Object.fromEntries(
      leftOut.map(({ group, fitted }) => [group, weightsOf(fitted, expected)] as const),
    ) satisfies Record<string, EarWeights>,
  );
});

/** A fit without one note or strength, and by how much that one's strikes were named, nepers (negative: not). */
interface LeftOut {
  readonly key: Key;
  readonly group: string;
  readonly fitted: FittedEar;
  readonly margins: readonly number[];
}

function leave(
  key: Key,
  seen: readonly SeenExample[],
  whole: FittedEar,
  tell: (line: string) => void,
): readonly LeftOut[] {
  const real = seen.filter(({ kind, right }) => kind === 'real' && right >= 0);
  const judged: { each: SeenExample; isRight: boolean; odds: number }[] = [];
  const leftOut: LeftOut[] = [];
  for (const group of new Set(real.map((each) => each[key]))) {
    const fitted = fitEar(
      seen.filter((each) => each[key] !== group),
      whole,
    );
    const own = real.filter((one) => one[key] === group);
    const margins = own.flatMap((each) => marginOf(each, fitted.note) ?? []);
    leftOut.push({ key, group, fitted, margins });
    for (const each of own) {
      const question = questionOf(each, fitted.note);
      const odds = question ? dot(question.features, fitted.strike) : 0;
      judged.push({ each, isRight: isNamed(each, fitted.note), odds });
    }
  }
  for (const provisional of [false, true]) {
    const of = judged.filter(({ each }) => each.provisional === provisional);
    const right = of.filter(({ isRight }) => isRight);
    const wrong = of.filter(({ isRight }) => !isRight);
    tell(
      `Each ${key} left out in turn, ${provisional ? 'first' : 'settled'} look: ${right.length} of ${of.length} named; odds of a strike below 0 in ${right.filter(({ odds }) => odds < 0).length}, below -4 in ${right.filter(({ odds }) => odds < -4).length}.`,
    );
    log(`  wrong: ${counted(wrong, ({ each }) => `${each.note}-${each.strength}`)}`);
    log(
      `  refused: ${counted(
        right.filter(({ odds }) => odds < 0),
        ({ each }) => `${each.note}-${each.strength}`,
      )}`,
    );
  }
  return leftOut;
}

/** What is no strike, each kind of drum, voice and blow left out in turn (in eight parts). */
function judgeBlows(
  seen: readonly SeenExample[],
  whole: FittedEar,
  tell: (line: string) => void,
): void {
  const partOf = (name: string): number =>
    [...name].reduce((sum, letter) => (31 * sum + letter.charCodeAt(0)) % 9973, 7) % 8;
  const others = seen.filter(({ hz, provisional }) => hz === null && !provisional);
  const taken: SeenExample[] = [];
  for (let part = 0; part < 8; part++) {
    const isIn = (each: SeenExample): boolean => each.hz === null && partOf(each.note) === part;
    const fitted = fitEar(
      seen.filter((each) => !isIn(each)),
      whole,
    );
    for (const each of others.filter(isIn)) {
      const question = questionOf(each, fitted.note);
      if (question && dot(question.features, fitted.strike) > 0) taken.push(each);
    }
  }
  for (const kind of ['drum', 'speech', 'blow']) {
    const all = others.filter((each) => each.kind === kind);
    const ones = taken.filter((each) => each.kind === kind);
    tell(
      `Of ${all.length} onsets of kind ${kind}, each left out, ${ones.length} have odds of a strike over 0.`,
    );
    log(`  ${counted(ones, ({ note }) => note)}`);
  }
}

function counted<Item>(items: readonly Item[], keyOf: (item: Item) => string): string {
  const counts = new Map<string, number>();
  for (const item of items) counts.set(keyOf(item), (counts.get(keyOf(item)) ?? 0) + 1);
  return [...counts].map(([key, count]) => `${count} ${key}`).join(', ');
}
