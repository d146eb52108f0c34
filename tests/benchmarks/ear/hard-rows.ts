// Rows on scenes as hard as real pans: which note, how accurate, and how many strikes are lost.
import { centsBetween } from '../../../src/domain/tuning/units';
import { guidedTo, type HeardScene, hearAll, panOnly } from '../../ear-scenes/hear-scene';
import { seedsFrom } from '../../ear-scenes/seeds';
import { percentOf, quantile } from '../../ear-scenes/statistics';
import { countOf, type NoteOutcome, noteOutcome } from '../../ear-scenes/which-note';
import { type HardScene, hardScene } from '../../sounds/hard-scene';
import type { Row } from './print-table';

/** The targets are those of the real strikes of pans never met, told nothing and with the note. */
const namedTarget = 95;
const guidedTarget = 98;
const garageTarget = 90;
const nearCents = 1.5;

interface HeardHard extends HeardScene {
  readonly scene: HardScene;
}

const sceneCount = 300;

export function hardRows(): readonly Row[] {
  const scenes = seedsFrom(1, sceneCount).map((seed) => hardScene(seed));
  const rejoined = (heard: readonly HeardScene[]): readonly HeardHard[] =>
    heard.flatMap((each, n) => {
      const scene = scenes[n];
      return scene ? [{ ...each, scene }] : [];
    });
  const free = rejoined(hearAll(scenes, () => panOnly));
  const guided = rejoined(hearAll(scenes, ({ truth }) => guidedTo(truth.note)));
  return [
    ...rowsOf('the pan as candidates, no hint', free, namedTarget),
    ...rowsOf('told the note', guided, guidedTarget),
  ];
}

function rowsOf(told: string, all: readonly HeardHard[], target: number): readonly Row[] {
  const dry = all.filter(({ scene }) => scene.truth.room === 'none');
  const parts: readonly [string, readonly HeardHard[], number][] = [
    [`hard scenes without a room, ${told}`, dry, target],
    ...(['garage', 'large garage'] as const).map((room): [string, readonly HeardHard[], number] => [
      `  in a ${room}`,
      all.filter(({ scene }) => scene.truth.room === room),
      garageTarget,
    ]),
  ];
  return [
    ...parts.map(([quantity, some, least]) => namedRow(quantity, some, least)),
    ...strengthRows(dry),
    ...(['fundamental', 'octave'] as const).map((name) => accuracyRow(name, dry)),
  ];
}

const outcomeOf = ({ scene, heard }: HeardHard): NoteOutcome =>
  noteOutcome(scene.truth.note, heard);

function namedRow(quantity: string, some: readonly HeardHard[], least: number): Row {
  const outcomes = some.map(outcomeOf);
  const right = percentOf(outcomes, (each) => each === 'right');
  const knocks = some.filter(({ heard }) => heard?.kind === 'knock').length;
  const missed = some.filter(({ heard }) => heard === null).length;
  const others = `${countOf(outcomes, 'wrong')} wrong, ${countOf(outcomes, 'asked')} asked, ${knocks} knocks, ${missed} not heard`;
  const refused = countOf(outcomes, 'refused') - knocks - missed;
  return {
    quantity,
    target: `>= ${least} %`,
    measured: `${right.toFixed(1)} % of ${some.length} named right; ${others}, ${refused} refused otherwise`,
    isMet: right >= least,
  };
}

const strengthRows = (some: readonly HeardHard[]): readonly Row[] =>
  [
    ['soft', 0, 1 / 3],
    ['middling', 1 / 3, 2 / 3],
    ['hard', 2 / 3, 1.01],
  ].map(([name, low, high]) => {
    const part = some.filter(
      ({ scene }) => scene.truth.strength >= Number(low) && scene.truth.strength < Number(high),
    );
    const right = percentOf(part, (each) => outcomeOf(each) === 'right');
    return {
      quantity: `  of these, ${name} strokes`,
      target: '',
      measured: `${right.toFixed(1)} % of ${part.length} named right`,
      isMet: null,
    };
  });

/** Within reach of one of the planted lines; a value between two lines is not. */
function accuracyRow(name: 'fundamental' | 'octave', some: readonly HeardHard[]): Row {
  const found = some.flatMap(({ scene, heard }) => {
    if (heard?.kind !== 'strike' || heard.note !== scene.truth.note) return [];
    const measured = heard[name];
    if (!measured) return [];
    const errors = scene.truth.lines[name].map((hz) => Math.abs(centsBetween(hz, measured.hz)));
    return [{ error: Math.min(...errors), sigma: measured.sigmaCents, isPair: errors.length > 1 }];
  });
  const near = percentOf(found, ({ error }) => error <= nearCents);
  const pairs = found.filter(({ isPair }) => isPair);
  const nearOfPairs = percentOf(pairs, ({ error }) => error <= nearCents);
  const stated = percentOf(found, ({ error, sigma }) => error <= 2 * sigma);
  const middle = quantile(
    found.map(({ error }) => error),
    0.5,
  );
  return {
    quantity: `  ${name}: within ${nearCents} cents of a planted line`,
    target: '>= 95 %',
    measured: `${near.toFixed(1)} % of ${found.length} (${nearOfPairs.toFixed(1)} % of the ${pairs.length} with two lines or more); median ${middle.toFixed(2)} cent; within 2 stated errors ${stated.toFixed(1)} %`,
    isMet: near >= 95,
  };
}
