// Prints the figures of several racks as a table, a column a size; what was not measured is a dash.
import type { PeakMemory } from './page-memory';
import type { RackFigures } from './rack-figures';

export const print = (line: string): boolean => process.stdout.write(`${line}\n`);

export interface RackColumn {
  readonly pans: number;
  readonly strikes: number;
  readonly figures: RackFigures;
}

export function printRacks(columns: readonly RackColumn[], starts: number): void {
  const row = (name: string, target: string, cell: (column: RackColumn) => string | undefined) => {
    const cells = columns.map((column) => (cell(column) ?? '–').padStart(16));
    print([name.padEnd(46), target.padEnd(9), ...cells].join(''));
  };
  print('');
  row('pans, 50 rounds of 29 notes each', 'target', ({ pans }) => String(pans));
  row('strikes', '', ({ strikes }) => strikes.toLocaleString('en'));
  row('cold open of the rack, ms (median, worst)', '150', ({ figures }) =>
    times(figures.opened?.copy),
  );
  row('  and read from the database, ms', '150', ({ figures }) => times(figures.opened?.rack));
  row('  the app, from nothing to the first pans, ms', '', ({ figures }) =>
    times(figures.opened?.app.map(({ first }) => first)),
  );
  row('  and to all of them, ms', '', ({ figures }) =>
    times(figures.opened?.app.map(({ all }) => all)),
  );
  row('open of a pan, ms', '150', ({ figures }) => times(figures.opened?.pan));
  row('a note’s history, ms', '100', ({ figures }) => times(figures.opened?.note));
  row('  load of the machine meanwhile', '', ({ figures }) => figures.opened?.load.toFixed(1));
  row('export of all, s', '', ({ figures }) => figures.exported?.seconds.toFixed(1));
  row('  peak of JS heap / of the process, MB', 'bounded', ({ figures }) =>
    peak(figures.exported?.peak),
  );
  row('  before', '', ({ figures }) => peak(figures.exported?.before));
  row('size of the file, MB', '', ({ figures }) => megabytes(figures.exported?.fileBytes));
  row('import: check of the file, s', '', ({ figures }) =>
    figures.imported?.checkSeconds.toFixed(1),
  );
  row('import: taking in, s', '', ({ figures }) => figures.imported?.seconds.toFixed(1));
  row('  peak of JS heap / of the process, MB', 'bounded', ({ figures }) =>
    peak(figures.imported?.peak),
  );
  row('  before', '', ({ figures }) => peak(figures.imported?.before));
  row('database on the disk, MB', '', ({ figures }) => megabytes(figures.filled?.storedBytes));
  row('filling it through the store, s', '', ({ figures }) => figures.filled?.seconds.toFixed(0));
  print(
    `(cold: a fresh browser process each of ${starts} times, the disk's pages still in the kernel's cache;`,
  );
  print(
    ' before, the browser was left open twice until its database had merged what filling left behind;',
  );
  print(
    ' the rack opens from the copy of its cards, then what the database says replaces it; in the app: from the',
  );
  print(' beginning of its page, out of its offline copy, until they are painted;');
  print(
    ' of a pan: its records and the readings of its newest two rounds; of a note: its readings and their values;',
  );
  print(
    ' process: resident size of the page’s process, from /proc; the heap is asked for ten times a second)\n',
  );
}

export function times(milliseconds: readonly number[] | undefined): string | undefined {
  if (!milliseconds) return undefined;
  const sorted = [...milliseconds].sort((low, high) => low - high);
  const median = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  return `${median.toFixed(0)} (${(sorted.at(-1) ?? Number.NaN).toFixed(0)})`;
}

const megabytes = (bytes: number | undefined): string | undefined =>
  bytes === undefined ? undefined : (bytes / 1e6).toFixed(1);

function peak(memory: PeakMemory | undefined): string | undefined {
  if (!memory) return undefined;
  const { heapBytes, processBytes } = memory;
  const process = processBytes === null ? '?' : (processBytes / 1e6).toFixed(0);
  return `${(heapBytes / 1e6).toFixed(0)} / ${process}`;
}
