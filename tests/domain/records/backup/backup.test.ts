import { gunzipSync, gzipSync, crc32 as zlibCrc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { BackupPart } from '../../../../src/domain/records/backup/backup-format';
import type {
  BackupReport,
  BackupVerdict,
} from '../../../../src/domain/records/backup/backup-verdict';
import * as fc from '../../../properties';
import { anyAttachment, anyRecord, damaged } from '../record-arbitraries';
import { header, read, signed, written } from './backup-sample';

const anyPart: fc.Arbitrary<BackupPart> = fc.oneof(
  { weight: 4, arbitrary: anyRecord.map((record) => ({ kind: 'record' as const, record })) },
  {
    weight: 1,
    arbitrary: anyAttachment.map((attachment) => ({ kind: 'attachment' as const, attachment })),
  },
);
const someParts = fc.array(anyPart, { minLength: 1, maxLength: 8 });
const sample = fc.sample(fc.array(anyPart, { minLength: 7, maxLength: 7 }), {
  numRuns: 1,
  seed: 7,
})[0] as readonly BackupPart[];

function reportOf(verdict: BackupVerdict): BackupReport {
  if (!('report' in verdict)) throw new Error(`no report: ${verdict.kind}`);
  return verdict.report;
}

describe('a backup', () => {
  it('gives back what was put into it, in whatever pieces it is read', () => {
    fc.assert(
      fc.property(someParts, fc.integer({ min: 1, max: 5_000 }), (parts, size) => {
        const result = read(written(parts), size);
        expect(result.parts).toEqual(parts);
        expect(result.verdict).toMatchObject({ kind: 'whole', report: { header } });
      }),
    );
  });

  it('is one valid JSON document in ASCII, a record a line', () => {
    fc.assert(
      fc.property(someParts, (parts) => {
        const text = written(parts);
        expect(/^[\n\x20-\x7e]*$/.test(text)).toBe(true);
        expect(text.split('\n')).toHaveLength(parts.length + 3);
        const document = JSON.parse(text);
        expect(document).toMatchObject({ format: 'ringwright-rack', version: 1, ...header });
        expect(document.records).toHaveLength(parts.length);
      }),
    );
  });

  it('ends with the CRC-32 of all before its last line, as zlib computes it', () => {
    const text = written(sample);
    const lastLine = text.lastIndexOf('\n', text.length - 2) + 1;
    const { sum } = JSON.parse(`{"records":[${text.slice(lastLine)}`);
    expect(Number.parseInt(sum, 16)).toBe(zlibCrc32(text.slice(0, lastLine)));
  });

  it('survives compression, a byte order mark and other line breaks', () => {
    const text = written(sample);
    const there = gunzipSync(gzipSync(text)).toString('utf8').replaceAll('\n', '\r\n');
    expect(read(`\ufeff${there}\r\n`)).toMatchObject({
      parts: sample,
      verdict: { kind: 'whole' },
    });
  });

  it('is read as whole without its very last line break', () => {
    expect(read(written(sample).trimEnd()).verdict.kind).toBe('whole');
  });

  it('of an empty rack is nothing to restore, without a fault', () => {
    const { verdict } = read(written([]));
    expect(verdict).toMatchObject({ kind: 'nothing', report: { header, faults: [] } });
    expect(() => JSON.parse(written([]))).not.toThrow();
  });
});

describe('a damaged backup', () => {
  const lines = written(sample).split('\n');
  const joined = (...changed: string[]) => changed.join('\n');

  it('loses a changed line and says which, of which pan, and why', () => {
    const pan = JSON.parse(lines[2]?.slice(0, -1) ?? '')[1].pan;
    const changed = lines.with(2, lines[2]?.replace('"shape":1', '"shape":2') ?? '');
    const { parts, verdict } = read(joined(...changed));
    expect(parts).toEqual(sample.toSpliced(1, 1));
    expect(verdict.kind).toBe('in-part');
    expect(reportOf(verdict).leftOut).toEqual([{ line: 3, why: 'changed', pan }]);
    expect(reportOf(verdict).faults).toEqual(['changed']);
  });

  it('that was cut off keeps all lines before the cut', () => {
    const text = written(sample);
    const cut = text.indexOf('\n', text.length / 2) + 20;
    const whole = text.slice(0, cut).split('\n').length - 2;
    const { parts, verdict } = read(text.slice(0, cut));
    expect(parts).toEqual(sample.slice(0, whole));
    expect(reportOf(verdict).faults).toEqual(['no-end']);
    expect(reportOf(verdict).leftOut).toMatchObject([{ line: whole + 2, why: 'unreadable' }]);
  });

  it('without one of its lines says that lines are missing', () => {
    const { parts, verdict } = read(joined(...lines.toSpliced(3, 1)));
    expect(parts).toEqual(sample.toSpliced(2, 1));
    expect(reportOf(verdict).faults).toEqual(['lines-missing', 'changed']);
  });

  it('with lines in another order, or one twice, keeps all and says that it was changed', () => {
    const [one = '', other = ''] = [lines[2], lines[4]];
    const swapped = read(joined(...lines.with(2, other).with(4, one)));
    expect(swapped.parts).toHaveLength(sample.length);
    expect(reportOf(swapped.verdict).faults).toEqual(['changed']);
    const twice = read(joined(...lines.toSpliced(2, 0, one)));
    expect(reportOf(twice.verdict).faults).toEqual(['changed']);
  });

  it('without its header keeps all lines', () => {
    for (const first of ['{"format":"ringwr', '', lines[1] ?? '']) {
      const { parts, verdict } = read(joined(first, ...lines.slice(1)));
      expect(parts.length).toBeGreaterThanOrEqual(sample.length);
      expect(reportOf(verdict).faults).toContain('no-header');
    }
  });

  it('with more after its end keeps all, and is not called whole', () => {
    const { parts, verdict } = read(`${written(sample)}{"format":"x"}`);
    expect(parts).toEqual(sample);
    expect(verdict).toMatchObject({ kind: 'in-part' });
    expect(read(written(sample) + written(sample)).verdict.kind).toBe('in-part');
  });

  it('with records of a newer version keeps the others and says so', () => {
    const newer = '{"shape":2,"id":"x","pan":"pan-a","at":1,"kind":"reading"}';
    const { parts, verdict } = read(joined(...lines.toSpliced(2, 0, `${signed(newer)},`)));
    expect(parts).toEqual(sample);
    expect(reportOf(verdict).leftOut).toEqual([{ line: 3, why: 'newer', pan: 'pan-a' }]);
  });
});

describe('another file', () => {
  it.each([
    ['an empty one', '', 'nothing'],
    ['JSON of another program', '{"format":"other","version":1,"records":[\n]}', 'foreign'],
    ['a list', '[1,2,3]', 'foreign'],
    ['a page', '<!doctype html>\n<p>hello</p>', 'foreign'],
    ['bytes', '\u0000\u0001\ufffd\n\u0000', 'foreign'],
    ['a newer backup', '{"format":"ringwright-rack","version":2,"records":[\n', 'newer'],
    [
      'a backup of no version',
      '{"format":"ringwright-rack","version":"1","records":[\n',
      'foreign',
    ],
  ])('is told apart: %s', (_what, text, kind) => {
    expect(read(text)).toMatchObject({ parts: [], verdict: { kind } });
  });

  it('that is huge is given up early', () => {
    const foreignAfter = 10_000;
    for (const text of ['x'.repeat(1e6), 'x\n'.repeat(5e5), '['.repeat(1e6)]) {
      const { verdict, charactersRead } = read(text, 1_000, { foreignAfter });
      expect(verdict.kind).toBe('foreign');
      expect(charactersRead).toBeLessThan(12_000);
    }
  });
});

describe('a malicious backup', () => {
  const start = written([]).split('\n')[0];
  const file = (...json: string[]): string => `${start}\n${json.map(signed).join(',\n')}`;

  it('is not followed into brackets in brackets', () => {
    const deep = `{"kind":"mark","x":${'['.repeat(1e6)}${']'.repeat(1e6)}}`;
    const { verdict } = read(file(deep), 1e5);
    expect(reportOf(verdict).leftOut).toMatchObject([{ line: 2, why: 'nested' }]);
    // Brackets in a text are none.
    const mark = { shape: 1, id: 'm', pan: 'p', at: 1, kind: 'mark', round: null, note: 1 };
    const text = JSON.stringify({ ...mark, mark: 'dead', later: '\\"[[['.repeat(50) });
    expect(read(file(text)).parts).toHaveLength(1);
  });

  it('loses lines that are longer than any record', () => {
    const long = `{"kind":"mark","x":"${'x'.repeat(5_000)}"}`;
    const { verdict } = read(file(long, '{"a":1}'), 700, { line: 4_000 });
    expect(reportOf(verdict).leftOut).toMatchObject([{ why: 'too-long' }, { why: 'no-record' }]);
  });

  it('is read no further than the limits', () => {
    const text = written([...sample, ...sample]);
    const many = read(text, 100, { parts: 3 });
    expect(many.parts).toEqual(sample.slice(0, 3));
    expect(reportOf(many.verdict).faults).toContain('too-many');
    expect(many.charactersRead).toBeLessThan(text.length);
    const long = read(text, 100, { characters: 2_000 });
    expect(reportOf(long.verdict).faults).toContain('too-long');
    expect(long.charactersRead).toBeLessThanOrEqual(2_100);
  });

  it('lists few of its faults and counts all', () => {
    const { verdict } = read(`${start}\n${'x\n'.repeat(5_000)}`);
    expect(reportOf(verdict).leftOut).toHaveLength(100);
    expect(reportOf(verdict).leftOutCount).toBe(5_000);
  });

  it('with right sums over anything never throws, and gives out valid parts only', () => {
    const anything = fc.oneof(
      fc.json({ maxDepth: 4 }),
      fc.oneof(damaged(anyRecord), damaged(damaged(anyRecord))).map((value) => {
        // What has no JSON (a BigInt) is not in a file.
        try {
          return JSON.stringify(value) ?? 'null';
        } catch {
          return 'null';
        }
      }),
      fc.string({ unit: 'binary-ascii' }),
    );
    fc.assert(
      fc.property(fc.array(anything, { maxLength: 4 }), (lines) => {
        const { parts } = read(file(...lines.map((each) => each.replaceAll('\n', ' '))));
        expect(read(written(parts)).parts).toEqual(parts);
      }),
      { numRuns: 1_000 },
    );
  });
});
