// Files that are made to fill the phone, to stop it or to break something. Each is given up early or its harm left out.
import { describe, expect, it } from 'vitest';
import type { BackupPart } from '../../../../src/domain/records/backup/backup-format';
import { BackupReader } from '../../../../src/domain/records/backup/backup-reader';
import type { BackupVerdict } from '../../../../src/domain/records/backup/backup-verdict';
import { canonicalText } from '../../../../src/domain/records/canonical-text';
import { signed } from './backup-sample';

const head =
  '{"format":"ringwright-rack","version":1,"made":0,"app":"0.1.0","pans":1,"records":[\n';
const million = 1_000_000;

interface Outcome {
  readonly verdict: BackupVerdict;
  readonly parts: number;
  readonly first: BackupPart | undefined;
  /** Processor time, ms: a busy machine must not decide. */
  readonly milliseconds: number;
  /** Growth of the memory in use while it was read, bytes. */
  readonly growth: number;
  readonly characters: number;
}

/** Reads texts until the reader has had enough. */
function outcomeOf(texts: Iterable<string>): Outcome {
  const reader = new BackupReader();
  const before = process.memoryUsage().heapUsed;
  const begun = process.cpuUsage();
  let [parts, characters, most] = [0, 0, 0];
  let first: BackupPart | undefined;
  const take = (some: readonly BackupPart[]) => {
    parts += some.length;
    first ??= some[0];
  };
  for (const text of texts) {
    characters += text.length;
    take(reader.push(text));
    most = Math.max(most, process.memoryUsage().heapUsed);
    if (reader.isStopped) break;
  }
  const end = reader.end();
  take(end.parts);
  const { user, system } = process.cpuUsage(begun);
  const milliseconds = (user + system) / 1000;
  return { verdict: end.verdict, parts, first, milliseconds, growth: most - before, characters };
}

/** `line` of each number, with a good header before, in pieces of about a thousand lines. */
function* file(count: number, line: (k: number) => string, beginning = head): Generator<string> {
  yield beginning;
  for (let k = 0; k < count; k += 1000) {
    const lines = Array.from({ length: Math.min(1000, count - k) }, (_, n) => line(k + n));
    yield `${lines.join('\n')}\n`;
  }
}

const recordHead = '"shape":1,"pan":"pan-1","at":1';
const mark = (k: number, rest = '') =>
  `{${recordHead},"id":"mark-${k}","kind":"mark","round":null,"note":60,"mark":"dead"${rest}}`;
const line = '{"hz":440,"sigmaCents":0.1,"decaySeconds":1,"levelDb":-20}';
const reading = (k: number) =>
  `{${recordHead},"id":"reading-${k}","kind":"reading","round":null,"note":60,"strikes":[{"fundamental":${line}}]}`;

/** What a check of a file does with it: see check-backup. */
const isRefused = ({ verdict }: Outcome): boolean =>
  verdict.kind === 'foreign' ||
  verdict.kind === 'newer' ||
  verdict.kind === 'nothing' ||
  verdict.report.faults.some((fault) => /^too-/.test(fault));

describe('a file of a million lines', () => {
  it.each([
    ['that are no lines of a backup', file(million, (k) => `line ${k}`)],
    ['that are no lines of a backup, without a header', file(million, (k) => `line ${k}`, '')],
    ['that are empty', file(million, () => '')],
    ['with wrong checksums', file(million, (k) => `["00000000",${mark(k)}],`)],
    [
      'of kinds that nobody knows',
      file(million, (k) => `${signed(`{"shape":1,"kind":"x${k}"}`)},`),
    ],
    [
      'of a shape that is newer',
      file(million, (k) => `${signed(`{"shape":9,"kind":"mark","k":${k}}`)},`),
    ],
    [
      'each of another pan',
      file(million, (k) => `${signed(mark(k).replace('pan-1', `pan-${k}`))},`),
    ],
  ])('%s is given up within a second and in little memory', (_name, texts) => {
    const outcome = outcomeOf(texts);
    expect(isRefused(outcome)).toBe(true);
    expect(outcome.milliseconds).toBeLessThan(1000);
    expect(outcome.growth).toBeLessThan(100 * million);
  });
});

describe('a million notes', () => {
  const layoutOf = (notes: string) =>
    `{${recordHead},"id":"edit-1","kind":"pan-edit","replaces":[],"fields":{"name":"Lead","layout":{"drums":[{"notes":[${notes}]}]}}}`;

  it('as readings of one pan, each good, are given up and never held in memory', () => {
    const outcome = outcomeOf(file(million, (k) => `${signed(reading(k))},`));
    expect(isRefused(outcome)).toBe(true);
    expect(outcome.parts).toBe(100_000);
    expect(outcome.growth).toBeLessThan(100 * million);
  });

  it('in a layout are left out, be the line short enough to be read or not', () => {
    for (const note of ['{}', '{"note":60,"clock":1,"radius":0.5,"along":0.1,"across":0.1}']) {
      const text = `${signed(layoutOf(Array(million).fill(note).join()))}\n`;
      const outcome = outcomeOf([head, text]);
      expect(outcome.milliseconds).toBeLessThan(1000);
      expect(outcome.growth).toBeLessThan(200 * million);
      const record = outcome.first?.kind === 'record' ? outcome.first.record : null;
      expect(canonicalText(record ?? {}).length).toBeLessThan(1000);
    }
  });
});

describe('a line', () => {
  it('that never ends is given up', () => {
    const outcome = outcomeOf([head, ...Array(1000).fill('a'.repeat(million))]);
    expect(isRefused(outcome)).toBe(true);
    expect(outcome.characters).toBeLessThan(20 * million);
    expect(outcome.growth).toBeLessThan(100 * million);
  });

  it.each([
    ['lists', '['.repeat(million / 2) + ']'.repeat(million / 2)],
    ['objects', `${'{"a":'.repeat(million / 2)}1${'}'.repeat(million / 2)}`],
  ])('with half a million %s in each other is left out without being parsed', (_name, nested) => {
    const outcome = outcomeOf([
      head,
      `${signed(mark(1, `,"x":${nested}`))},\n`,
      `${signed(mark(2))}\n`,
    ]);
    expect(outcome.verdict).toMatchObject({ report: { leftOut: [{ line: 2, why: 'nested' }] } });
    expect(outcome.parts).toBe(1);
    expect(outcome.milliseconds).toBeLessThan(1000);
  });

  it('with five million letters in a name keeps as many as a name may have', () => {
    const text = signed(
      `{${recordHead},"id":"edit-1","kind":"pan-edit","replaces":[],"fields":{"name":"${'n'.repeat(5 * million)}"}}`,
    );
    const outcome = outcomeOf([head, text]);
    const record = outcome.first?.kind === 'record' ? outcome.first.record : null;
    if (record?.kind !== 'pan-edit') throw new Error('no edit');
    expect(record.fields.name).toHaveLength(80);
    expect(outcome.milliseconds).toBeLessThan(1000);
  });

  it.each(['NaN', 'Infinity', '-Infinity', '1e999', '"440"', 'null', '[440]', '-0', '1e-320'])(
    'with %s for a frequency gives no strike of that frequency',
    (hz) => {
      const bad = reading(1).replace('"hz":440', `"hz":${hz}`);
      const outcome = outcomeOf([head, `${signed(bad)}\n`]);
      expect(outcome.parts).toBe(0);
    },
  );
});

describe('names that objects of the language have', () => {
  it.each([
    [
      'as fields of a record',
      mark(1, ',"__proto__":{"isAdmin":true},"constructor":{"prototype":{"isAdmin":true}}'),
    ],
    ['as its kind', mark(1).replace('"mark","round"', '"__proto__","round"')],
    ['as its pan', mark(1).replace('pan-1', '__proto__')],
    ['as its id', mark(1).replace('mark-1', 'constructor')],
    [
      'as the name of a part',
      `{${recordHead},"id":"edit-1","kind":"pan-edit","replaces":[],"fields":{"name":"a","__proto__":{"isAdmin":true}}}`,
    ],
  ])('%s change nothing about other objects, nor about the record', (_name, json) => {
    const outcome = outcomeOf([head, `${signed(json)}\n`]);
    expect(({} as { isAdmin?: boolean }).isAdmin).toBeUndefined();
    expect(Object.getOwnPropertyNames(Object.prototype)).not.toContain('isAdmin');
    const record = outcome.first?.kind === 'record' ? outcome.first.record : null;
    if (!record) return;
    expect(Object.getPrototypeOf(record)).toBe(Object.prototype);
    expect(Object.hasOwn(record, '__proto__')).toBe(false);
    const fields = record.kind === 'pan-edit' ? record.fields : {};
    expect(Object.getPrototypeOf(fields)).toBe(Object.prototype);
    expect(Object.hasOwn(fields, '__proto__')).toBe(false);
  });
});
