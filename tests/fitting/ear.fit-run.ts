import { test } from 'vitest';
import { strikeFeatureNames } from '../../src/dsp/faults/strike-features';
import { noteFeatureNames } from '../../src/dsp/note/note-features';
import { missingTakes, realTakes } from '../benchmarks/strikes/real-takes';
import { drumSounds, missingDrums } from '../sounds/drum-kits';
import { hasSpeech, missingSpeech } from '../sounds/spoken-sentences';
import { realStrikes } from '../synthetic-sounds/real-strike';
import { cutExamples, isCut } from './cut-examples';
import { type SeenExample, seenExamples } from './ear-features';
import { dot, fitChoices, fitQuestions } from './fits';
import {
  bankExamples,
  bassExamples,
  blowExamples,
  drumExamples,
  type Example,
  realExamples,
  sceneExamples,
  speechExamples,
} from './strike-data';

const began = performance.now();
const log = (what: string) =>
  process.stdout.write(`${((performance.now() - began) / 1000).toFixed(0)} s ${what}\n`);

test('fit', async () => {
  const takes = realTakes();
  const drums = await drumSounds();
  if (!takes) throw new Error(missingTakes());
  if (!drums) throw new Error(missingDrums());
  if (!hasSpeech()) throw new Error(missingSpeech);
  const bank = await realStrikes();
  const sources: Record<string, () => Iterable<Example>> = {
    real: () => realExamples(takes, 6),
    drum: () => drumExamples(drums, 3),
    bank: () => bankExamples(bank, 40),
    speech: () => speechExamples(80),
    scene: () => sceneExamples(200),
    bass: () => bassExamples(40),
    blow: () => blows ?? [],
  };
  const blows = isCut('blow') ? null : await blowExamples(330);
  const seen: SeenExample[] = [];
  for (const [name, source] of Object.entries(sources)) {
    const cuts = cutExamples(name, source);
    log(`${name}: ${cuts.length} cuts`);
    seen.push(...seenExamples(name, cuts));
    log('  seen');
  }
  fitAll(seen);
});

const weightOf: Record<string, number> = { real: 1, bank: 0.5, scene: 0.5, bass: 0.5 };
const foldOf = (text: string): number =>
  [...text].reduce((sum, c) => (sum * 31 + c.charCodeAt(0)) % 9973, 7);

function fitAll(seen: readonly SeenExample[]): void {
  const positives = seen.filter(({ hz }) => hz !== null);
  const lost = positives.filter(({ right }) => right < 0);
  log(
    `${positives.length} strikes seen, ${lost.length} without their line: ${JSON.stringify(countBy(lost, (e) => e.kind))}`,
  );
  const usable = positives.filter(({ right }) => right >= 0);
  const choiceOf = (each: SeenExample) => {
    const rights = each.candidates.map(
      ({ hz }) => Math.abs(1200 * Math.log2(hz / (each.hz ?? 1))) <= 60,
    );
    const kept = each.candidates.filter((_, n) => n === each.right || !rights[n]);
    return {
      candidates: kept.map(({ features }) => features),
      right: kept.indexOf(each.candidates[each.right] as never),
      weight: weightOf[each.kind] ?? 1,
    };
  };
  const fit = (examples: readonly SeenExample[]) => fitChoices(examples.map(choiceOf), 1);
  const best = (each: SeenExample, weights: Float64Array): number => {
    let top = 0;
    const scores = each.candidates.map(({ features }) => dot(features, weights));
    scores.forEach((score, n) => {
      if (score > (scores[top] ?? 0)) top = n;
    });
    return top;
  };
  const isRight = (each: SeenExample, weights: Float64Array) => {
    const chosen = each.candidates[best(each, weights)];
    return chosen !== undefined && Math.abs(1200 * Math.log2(chosen.hz / (each.hz ?? 1))) <= 60;
  };
  for (const key of ['note', 'strength'] as const) {
    const groups = new Set(
      usable.filter((e) => e.kind === 'real' || e.kind === 'bank').map((each) => each[key]),
    );
    const results: { each: SeenExample; ok: boolean }[] = [];
    for (const group of groups) {
      const weights = fit(usable.filter((each) => each[key] !== group));
      for (const each of usable)
        if (each[key] === group) results.push({ each, ok: isRight(each, weights) });
    }
    for (const kind of ['real', 'bank'])
      for (const provisional of [false, true]) {
        const of = results.filter(
          ({ each }) => each.kind === kind && each.provisional === provisional,
        );
        log(
          `left out ${key}: ${kind} ${provisional ? 'first' : 'settled'} ${of.filter((e) => e.ok).length} of ${of.length}`,
        );
        if (!provisional)
          log(
            JSON.stringify(
              countBy(
                of.filter((e) => !e.ok),
                ({ each }) => `${each.note} ${each.strength}`,
              ),
            ),
          );
      }
  }
  const weights = fit(usable);
  log(
    `in sample: ${usable.filter((e) => isRight(e, weights)).length} of ${usable.length} ${JSON.stringify(
      countBy(
        usable.filter((e) => !isRight(e, weights)),
        (e) => e.kind,
      ),
    )}`,
  );
  for (const [k, name] of noteFeatureNames.entries()) log(`  ${name} ${weights[k]?.toFixed(2)}`);
  const questions = seen
    .filter((e) => e.candidates.length > 0 && (e.hz === null || isRight(e, weights)))
    .map((each) => {
      const chosen = each.candidates[best(each, weights)];
      return {
        each,
        isYes: each.hz !== null,
        features: Float64Array.from([1, ...(chosen?.asStrike ?? [])]),
        weight: 1,
      };
    });
  const groupsOf = [...new Set(seen.map((e) => foldOf(e.note) % 12))];
  const judged: { each: SeenExample; score: number }[] = [];
  for (const group of groupsOf) {
    const w = fitQuestions(
      questions.filter((q) => foldOf(q.each.note) % 12 !== group),
      1,
    );
    for (const q of questions)
      if (foldOf(q.each.note) % 12 === group)
        judged.push({ each: q.each, score: dot(q.features, w) });
  }
  for (const threshold of [-3, -2, -1, 0, 1, 2]) {
    const line = ['real', 'bank', 'scene', 'bass', 'drum', 'speech', 'blow'].map((kind) => {
      const of = judged.filter(({ each }) => each.kind === kind && !each.provisional);
      return `${kind} ${((100 * of.filter((j) => j.score > threshold).length) / of.length).toFixed(1)} %`;
    });
    log(`over ${threshold}: ${line.join(', ')}`);
  }
  for (const kind of ['drum', 'speech', 'blow'])
    log(
      `${kind}: ${JSON.stringify(
        countBy(
          judged.filter(({ each, score }) => each.kind === kind && score > 0 && !each.provisional),
          ({ each }) => each.note,
        ),
      )}`,
    );
  log(
    `real refused: ${JSON.stringify(
      countBy(
        judged.filter(({ each, score }) => each.kind === 'real' && score < 0 && !each.provisional),
        ({ each }) => `${each.note} ${each.strength}`,
      ),
    )}`,
  );
  const w = fitQuestions(questions, 1);
  for (const [k, name] of ['one', ...strikeFeatureNames].entries()) log(`  ${name} ${w[k]?.toFixed(2)}`);
}

function countBy<Item>(
  items: readonly Item[],
  keyOf: (item: Item) => string,
): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const item of items) counts[keyOf(item)] = (counts[keyOf(item)] ?? 0) + 1;
  return counts;
}
