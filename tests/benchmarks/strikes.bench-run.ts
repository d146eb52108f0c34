// How the ear does on real strikes: npm run bench:strikes. The folder is in STRIKES, else ../shared/strikes.
// Prints; fails only when the ear throws. One part alone: npm run bench:strikes -- -t garage
import { readFileSync } from 'node:fs';
import { beforeAll, test } from 'vitest';
import type { EarWeights } from '../../src/dsp/faults/ear-scores';
import { printAccuracy } from './strikes/accuracy';
import { type Codec, coded, hasFfmpeg } from './strikes/codec';
import { highPassed, noisy, resampled, reverberated, withOtherRinging } from './strikes/garage';
import {
  hearSound,
  inSilence,
  type Outcome,
  type Sound,
  toldNote,
  toldNothing,
} from './strikes/hear-take';
import { periodNote } from './strikes/period-detector';
import { printNonStrikes } from './strikes/real-non-strikes';
import { missingTakes, type RealTake, realTakes } from './strikes/real-takes';
import { countsOf, groupsOf, percent, print, rightOf } from './strikes/strike-table';

/** Weights that never met a note or a strength, written by `npm run fit:ear`. */
const leftOut = JSON.parse(
  readFileSync(new URL('./strikes/left-out-weights.json', import.meta.url), 'utf8'),
) as Readonly<Record<string, EarWeights>>;

/** The recordings begin 5 ms before the onset, and the silence before them lasts 0.5 s. */
const onset = 0.505;
const takes = realTakes();
beforeAll(() => print(takes ? `\n${takes.length} real strikes` : `\n${missingTakes()}`));

interface Row {
  readonly take: RealTake;
  readonly nothing: Outcome;
  readonly expected: Outcome;
  readonly period: boolean;
}

const rowsOf = (change: (take: RealTake, whole: Sound) => Sound, semitones = 0): readonly Row[] =>
  (takes ?? []).map((take) => {
    const sound = change(take, inSilence(take));
    const note = take.midi + semitones;
    return {
      take,
      nothing: hearSound(sound, note, toldNothing),
      expected: hearSound(sound, note, toldNote(note)),
      period: periodNote(sound, onset) === note,
    };
  });

function printRows(name: string, rows: readonly Row[]): void {
  const nothing = rows.map((row) => row.nothing);
  const expected = rows.map((row) => row.expected);
  const period = rows.filter((row) => row.period).length;
  print(
    `${name.padEnd(34)} told nothing ${rightOf(nothing).padEnd(8)} with the note ${rightOf(expected).padEnd(8)} pitchy ${percent(period, rows.length).padEnd(8)} ${countsOf(nothing)} | ${countsOf(expected)}`,
  );
}

test('plain', () => {
  const rows = rowsOf((_, whole) => whole);
  printRows('all', rows);
  for (const [note, group] of groupsOf(rows, ({ take }) => take.note))
    printRows(`note ${note}`, group);
  for (const [dynamic, group] of groupsOf(rows, ({ take }) => take.dynamic)) {
    printRows(`strength ${dynamic}`, group);
  }
  for (const { take, nothing, expected } of rows) {
    if (nothing !== 'right' || expected !== 'right')
      print(`  ${take.file}: ${nothing} | ${expected}`);
  }
});

test('left out', () => {
  for (const key of ['note', 'dynamic'] as const) {
    const rows = (takes ?? []).map((take): Row => {
      const weights = leftOut[take[key]];
      const sound = inSilence(take);
      return {
        take,
        nothing: hearSound(sound, take.midi, toldNothing, weights),
        expected: hearSound(sound, take.midi, toldNote(take.midi), weights),
        period: periodNote(sound, onset) === take.midi,
      };
    });
    printRows(`its ${key} left out of the fit`, rows);
    for (const { take, nothing, expected } of rows) {
      if (nothing !== 'right' || expected !== 'right')
        print(`  ${take.file}: ${nothing} | ${expected}`);
    }
  }
});

test('accuracy', () => printAccuracy(takes ?? [], onset));

test('garage', () => {
  printRows(
    'reverberation 0.4 s, 0 dB',
    rowsOf((take, whole) => reverberated(whole, 0.4, 0, take.take)),
  );
  printRows(
    'reverberation 1.0 s, 6 dB',
    rowsOf((take, whole) => reverberated(whole, 1, 6, take.take)),
  );
  printRows(
    'pink noise at 10 dB',
    rowsOf((take, whole) => noisy(whole, 10, take.midi * 100 + take.take)),
  );
  printRows(
    'high-pass at 150 Hz',
    rowsOf((_, whole) => highPassed(whole, 150)),
  );
  const others = takes?.filter(({ dynamic }) => dynamic === '3') ?? [];
  printRows(
    'another note rings at -15 dB',
    rowsOf((take, whole) => {
      const unlike = others.filter(({ midi }) => midi !== take.midi);
      const other = unlike[(take.midi * 7 + take.take * 3) % unlike.length] ?? take;
      return withOtherRinging(whole, other, onset, -15);
    }),
  );
  for (const semitones of [-5, -2, 2, 5]) {
    printRows(
      `resampled by ${semitones} semitones`,
      rowsOf((take) => inSilence(resampled(take, 2 ** (semitones / 12))), semitones),
    );
  }
  if (!hasFfmpeg()) return print('AAC and Opus: ffmpeg is not installed.');
  for (const codec of ['aac', 'opus'] satisfies Codec[]) {
    const sounds = coded(
      (takes ?? []).map((take) => inSilence(take)),
      codec,
    );
    const soundOf = new Map(takes?.map((take, n) => [take, sounds[n]]));
    printRows(
      `${codec} at 64 kbit/s`,
      rowsOf((take, whole) => soundOf.get(take) ?? whole),
    );
  }
});

test('no strikes', printNonStrikes);

test('smallest things of a stream', () => {
  printRows(
    'as the file is',
    rowsOf((take) => take),
  );
  printRows(
    '0.1 s after listening began',
    rowsOf((take) => inSilence(take, 0.095)),
  );
  printRows(
    'ends 0.4 s after the strike',
    rowsOf((take) => ({
      samples: inSilence(take).samples.slice(0, Math.round((onset + 0.4) * take.sampleRate)),
      sampleRate: take.sampleRate,
    })),
  );
  printRows(
    'faint noise instead of silence',
    rowsOf((take, whole) => noisy(whole, 50, take.take)),
  );
});
