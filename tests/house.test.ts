// How the house is kept: small rooms, files of one thought, and names that mean one thing.
import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { describe, expect, it } from 'vitest';

const mostFiles = 25;
const mostLines = 250;
const fewestLines = 10;

/** Files that are shorter, and why. Style sheets lie beside their part, however little it needs. */
const short: Readonly<Record<string, string>> = {
  'ui/words/keeping/backup-reminder-words.ts': 'the only words of backups in the first script',
  'advising/worker/advice.worker.ts': 'a thread entry is a shell',
  'analysis/worker/analysis.worker.ts': 'a thread entry is a shell',
  'command-line/check.mjs': 'a command is a shell',
  'domain/measurement/cut-sound.ts': 'a shape that several rooms share',
  'domain/ports/headset-port.ts': 'a port',
  'domain/ports/trace-store.ts': 'a port',
  'domain/ports/unsubscribe.ts': 'what all ports give back',
  'domain/tuning/reference.ts': 'a choice that several rooms share',
  'domain/tuning/third-kind.ts': 'a choice that several rooms share',
  'storage/browser/browser-printer.ts': 'an adapter for one call',
  'ui/words/measuring/sound-words.ts': 'words of one part, and no others go with them',
};

const source = join(import.meta.dirname, '..', 'src');

interface SourceFile {
  /** From `src`, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

const files: readonly SourceFile[] = readdirSync(source, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.(ts|tsx|mjs|css)$/.test(entry.name))
  .map((entry) => {
    const whole = join(entry.parentPath, entry.name);
    const path = whole
      .slice(source.length + 1)
      .split(sep)
      .join('/');
    return { path, text: readFileSync(whole, 'utf8') };
  });

const linesOf = ({ text }: SourceFile): number => text.trimEnd().split('\n').length;

/** Lists by what `keyOf` says of each. */
function grouped<T>(values: readonly T[], keyOf: (value: T) => string): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const value of values) {
    const key = keyOf(value);
    groups.set(key, [...(groups.get(key) ?? []), value]);
  }
  return groups;
}

/** What a file exports by name: declarations, as this project has no lists of exports. */
const exportsOf = ({ path, text }: SourceFile) =>
  [
    ...text.matchAll(
      /^export (?:declare |abstract |async )*(?:const|let|function\*?|class|type|interface|enum) ([A-Za-z_$][\w$]*)/gm,
    ),
  ].map(([, name = '']) => ({ name, path }));

const foldersTooFull = (all: readonly SourceFile[]): readonly string[] =>
  [...grouped(all, ({ path }) => path.split('/').slice(0, -1).join('/'))]
    .filter(([, inside]) => inside.length > mostFiles)
    .map(([folder]) => folder);

const tooLong = (all: readonly SourceFile[]): readonly string[] =>
  all.filter((file) => linesOf(file) > mostLines).map(({ path }) => path);

const tooShort = (all: readonly SourceFile[]): readonly string[] =>
  all
    .filter(
      (file) => linesOf(file) < fewestLines && !file.path.endsWith('.css') && !(file.path in short),
    )
    .map(({ path }) => path);

/** Names that more than one file exports, with these files. */
const doubled = (all: readonly SourceFile[]): readonly string[] =>
  [
    ...grouped(
      all.filter(({ path }) => /\.tsx?$/.test(path)).flatMap(exportsOf),
      ({ name }) => name,
    ),
  ]
    .filter(([, places]) => places.length > 1)
    .map(([name, places]) => `${name}: ${places.map(({ path }) => path).join(', ')}`);

describe('the source', () => {
  it('has at most 25 files in a folder', () => {
    expect(files.length).toBeGreaterThan(300);
    expect(foldersTooFull(files)).toEqual([]);
  });

  it('has no file of more than 250 lines', () => {
    expect(tooLong(files)).toEqual([]);
  });

  it('has no file of fewer than 10 lines but style sheets and those that are named with a reason', () => {
    expect(tooShort(files)).toEqual([]);
  });

  it('exports each name once, so that it means one thing', () => {
    expect(doubled(files)).toEqual([]);
  });

  it('is named in the exceptions as it is', () => {
    const paths = files.map(({ path }) => path);
    for (const path of Object.keys(short)) expect(paths).toContain(path);
  });
});

describe('these checks', () => {
  const file = (path: string, lines: number, text = 'x'): SourceFile => ({
    path,
    text: `${Array(lines).fill(text).join('\n')}\n`,
  });

  it('find a folder that is too full', () => {
    const full = Array.from({ length: mostFiles + 1 }, (_, k) => file(`full/${k}.ts`, 20));
    expect(foldersTooFull([...full, file('fine/a.ts', 20)])).toEqual(['full']);
    expect(foldersTooFull(full.slice(1))).toEqual([]);
  });

  it('find files that are too long or too short', () => {
    const all = [250, 251, 10, 9].map((lines) => file(`${lines}.ts`, lines));
    expect(tooLong(all)).toEqual(['251.ts']);
    expect(tooShort(all)).toEqual(['9.ts']);
  });

  it('find a name that two files export', () => {
    const one = file('one.ts', 1, 'export const placeOf = 1;');
    const other = file('other.tsx', 1, 'export async function placeOf() {}');
    const own = file('own.ts', 1, 'const placeOf = 1;');
    expect(doubled([one, other, own])).toEqual(['placeOf: one.ts, other.tsx']);
  });
});
