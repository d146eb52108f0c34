// How well the ear measures: every row of the table of targets, the measured figure beside it.
// Prints; fails only when the ear throws. One part alone: npm run bench:ear -- -t doublets
import { performance } from 'node:perf_hooks';
import { afterAll, beforeAll, test } from 'vitest';
import { anyNote } from '../dsp/listen-to';
import { guidedTo, type HeardScene, hearAll, panOnly } from '../ear-scenes/hear-scene';
import { seedsFrom } from '../ear-scenes/seeds';
import { type Scene, strikeScene } from '../sounds/scene';
import { damageRows } from './ear/damage-rows';
import { detectorRows } from './ear/detector-rows';
import { doubletRows } from './ear/doublet-rows';
import { hardRows } from './ear/hard-rows';
import { isolatedRows } from './ear/isolated-rows';
import { lowNoteRows } from './ear/low-note-rows';
import { nonStrikeRows } from './ear/non-strike-rows';
import { noteRows } from './ear/note-rows';
import { practiceRows } from './ear/practice-rows';
import { printHeading, printRow, type Row } from './ear/print-table';
import { realityRows } from './ear/reality-rows';
import { rollRows } from './ear/roll-rows';
import { sceneRows } from './ear/scene-rows';
import { timeRows } from './ear/time-rows';
import { verdictRows } from './ear/verdict-rows';

const began = performance.now();
const print = (rows: readonly Row[]): void => {
  for (const row of rows) printRow(row);
};

let scenes: readonly Scene[] | null = null;
const fullScenes = (): readonly Scene[] => {
  scenes ??= seedsFrom(1, 300).map((seed) => strikeScene(seed));
  return scenes;
};
let guided: readonly HeardScene[] | null = null;
const guidedScenes = (): readonly HeardScene[] => {
  guided ??= hearAll(fullScenes(), ({ truth }) => guidedTo(truth.note));
  return guided;
};

beforeAll(printHeading);
afterAll(() => {
  const seconds = (performance.now() - began) / 1000;
  process.stdout.write(`    (${seconds.toFixed(0)} s for the table)\n`);
});

test('single lines', () => print(isolatedRows()));
test('full scenes', () =>
  print(
    sceneRows(
      guidedScenes(),
      hearAll(fullScenes(), () => anyNote),
    ),
  ));
test('general-purpose detectors', async () => print(await detectorRows(guidedScenes())));
test('doublets', () => print(doubletRows()));
test('which note', async () =>
  print(
    await noteRows(
      guidedScenes(),
      hearAll(fullScenes(), () => panOnly),
    ),
  ));
test('no strikes', async () => print(await nonStrikeRows()));
test('rolls', async () => print(await rollRows()));
test('computing time', () =>
  print([...timeRows(fullScenes()), ...verdictRows(fullScenes().slice(0, 100))]));
test('low notes', () => print(lowNoteRows()));
test('damage', () => print(damageRows()));
test('hard scenes', () => print(hardRows()));
test('practice pan', () => print(practiceRows()));
test('reality', () => print(realityRows()));
