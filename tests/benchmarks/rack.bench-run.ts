// A band's rack of years: how long it takes to open it, a pan, a note's history, and to send it through a file.
// PANS sets the sizes ("10,100,1000"), STARTS how often each is opened. Prints a table; never fails by time.
import { expect, test } from 'vitest';
import { serveStorePage } from '../browser/build-store-page';
import { notes, strikesOfReading } from '../browser/store-page/fill-rack';
import { measureSize, type RackFigures } from './rack/measure-size';
import type { PeakMemory } from './rack/page-memory';

const sizes = (process.env['PANS'] ?? '10,100,1000').split(',').map(Number);
const starts = Number(process.env['STARTS'] ?? 9);
const rounds = 50;

const print = (line: string) => process.stdout.write(`${line}\n`);
const row = (name: string, target: string, cells: readonly string[]) =>
  print([name.padEnd(46), target.padEnd(9), ...cells.map((cell) => cell.padStart(16))].join(''));

test('the rack at every size', async () => {
  const served = await serveStorePage();
  const figures: RackFigures[] = [];
  try {
    for (const pans of sizes) {
      const strikesPerRound = notes.length * strikesOfReading;
      const size = { pans, rounds, strikesPerRound, starts };
      figures.push(
        await measureSize(served.address, size, ({ rack, pan, note }) =>
          print(`${pans} pans: rack ${times(rack)}, pan ${times(pan)}, note ${times(note)} ms`),
        ),
      );
    }
  } finally {
    await served.close();
  }
  const each = (text: (figure: RackFigures) => string) => figures.map(text);
  print('');
  row(
    'pans, 50 rounds of 29 notes each',
    'target',
    each(({ pans }) => String(pans)),
  );
  row(
    'strikes',
    '',
    each(({ strikes }) => strikes.toLocaleString('en')),
  );
  row(
    'cold open of the rack, ms (median, worst)',
    '150',
    each(({ rack }) => times(rack)),
  );
  row(
    'open of a pan, ms',
    '150',
    each(({ pan }) => times(pan)),
  );
  row(
    'a note’s history, ms',
    '100',
    each(({ note }) => times(note)),
  );
  row(
    'export of all, s',
    '',
    each((figure) => figure.exportSeconds.toFixed(1)),
  );
  row(
    '  peak of JS heap / of the process, MB',
    'bounded',
    each((f) => peak(f.exportPeak)),
  );
  row(
    '  before',
    '',
    each((f) => peak(f.exportBefore)),
  );
  row(
    'size of the file, MB',
    '',
    each(({ fileBytes }) => megabytes(fileBytes)),
  );
  row(
    'import: check of the file, s',
    '',
    each((figure) => figure.checkSeconds.toFixed(1)),
  );
  row(
    'import: taking in, s',
    '',
    each((figure) => figure.importSeconds.toFixed(1)),
  );
  row(
    '  peak of JS heap / of the process, MB',
    'bounded',
    each((f) => peak(f.importPeak)),
  );
  row(
    '  before',
    '',
    each((f) => peak(f.importBefore)),
  );
  row(
    'database on the disk, MB',
    '',
    each(({ storedBytes }) => megabytes(storedBytes)),
  );
  row(
    'filling it through the store, s',
    '',
    each((figure) => figure.fillSeconds.toFixed(0)),
  );
  print(
    `(cold: a fresh browser process each of ${starts} times, the disk's pages still in the kernel's cache;`,
  );
  print(
    ' of a pan: its records and the readings of its newest two rounds; of a note: its readings and their values;',
  );
  print(
    ' process: resident size of the page’s process, from /proc; the heap is asked for ten times a second)\n',
  );
  expect(figures).toHaveLength(sizes.length);
});

function times(milliseconds: readonly number[]): string {
  const sorted = [...milliseconds].sort((low, high) => low - high);
  const median = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  return `${median.toFixed(0)} (${(sorted.at(-1) ?? Number.NaN).toFixed(0)})`;
}

const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);

const peak = ({ heapBytes, processBytes }: PeakMemory): string =>
  `${(heapBytes / 1e6).toFixed(0)} / ${processBytes === null ? '?' : (processBytes / 1e6).toFixed(0)}`;
