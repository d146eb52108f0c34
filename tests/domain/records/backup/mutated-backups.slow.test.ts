// 20,000 damaged backups: none throws, and what is taken from them is what was in them.

import { describe, expect, it } from 'vitest';
import type { BackupPart } from '../../../../src/domain/records/backup/backup-format';
import * as fc from '../../../properties';
import { anyAttachment, anyRecord } from '../record-arbitraries';
import { read, written } from './backup-sample';

const parts: readonly BackupPart[] = [
  ...fc.sample(anyRecord, { numRuns: 6, seed: 11 }).map((record) => ({
    kind: 'record' as const,
    record,
  })),
  ...fc.sample(anyAttachment, { numRuns: 1, seed: 12 }).map((attachment) => ({
    kind: 'attachment' as const,
    attachment,
  })),
];
const whole = written(parts);

type Mutation = (text: string) => string;

const place = fc.double({ min: 0, max: 1, noNaN: true });
const at = (text: string, where: number): number => Math.floor(where * (text.length - 1));
const inserted = (text: string, from: number, to: number, middle: string): string =>
  text.slice(0, from) + middle + text.slice(to);

const flip = fc.tuple(place, fc.integer({ min: 0, max: 7 })).map(([where, bit]): Mutation => {
  return (text) => {
    const k = at(text, where);
    return inserted(text, k, k + 1, String.fromCharCode((text.charCodeAt(k) || 0) ^ (1 << bit)));
  };
});
const truncation = place.map(
  (where): Mutation =>
    (text) =>
      text.slice(0, at(text, where)),
);
const beginningLost = place.map(
  (where): Mutation =>
    (text) =>
      text.slice(at(text, where)),
);
const gap = fc.tuple(place, fc.nat(200)).map(
  ([where, length]): Mutation =>
    (text) => {
      const k = at(text, where);
      return inserted(text, k, k + length, '');
    },
);
const swap = fc.tuple(place, place).map(
  ([one, other]): Mutation =>
    (text) => {
      const lines = text.split('\n');
      const [a, b] = [one, other].map((part) => Math.floor(part * (lines.length - 1)));
      const [first = '', second = ''] = [lines[a ?? 0], lines[b ?? 0]];
      return lines
        .with(a ?? 0, second)
        .with(b ?? 0, first)
        .join('\n');
    },
);
const doubled = place.map(
  (where): Mutation =>
    (text) => {
      const lines = text.split('\n');
      const k = Math.floor(where * (lines.length - 1));
      return lines.toSpliced(k, 0, lines[k] ?? '').join('\n');
    },
);
const hugeNumber = fc
  .tuple(place, fc.constantFrom('1e999', '9'.repeat(400), '-1e308', '0.'.padEnd(300, '0')))
  .map(
    ([where, number]): Mutation =>
      (text) => {
        const k = text.indexOf(':', at(text, where));
        const end = k + 1 + (/[,}\]\n]/.exec(text.slice(k + 1))?.index ?? 0);
        return inserted(text, k + 1, end, number);
      },
  );
const brackets = fc
  .tuple(place, fc.constantFrom('[', '{', ']', '}', '"', '[{"a":'), fc.nat(3_000))
  .map(
    ([where, bracket, count]): Mutation =>
      (text) => {
        const k = at(text, where);
        return inserted(text, k, k, bracket.repeat(count));
      },
  );
const otherJson = fc.tuple(place, fc.json()).map(
  ([where, json]): Mutation =>
    (text) => {
      const k = at(text, where);
      return inserted(text, k, k, json);
    },
);
const otherText = fc.tuple(place, fc.string({ unit: 'binary', maxLength: 50 })).map(
  ([where, other]): Mutation =>
    (text) => {
      const k = at(text, where);
      return inserted(text, k, k + other.length, other);
    },
);

const mutation = fc.oneof(
  flip,
  truncation,
  beginningLost,
  gap,
  swap,
  doubled,
  hugeNumber,
  brackets,
  otherJson,
  otherText,
);

describe('20,000 mutated backups', () => {
  it('never throw, and nothing is taken from them that was not in the backup', () => {
    // As the reader gives them out, so that their fields come in the same order.
    const originals = new Set(read(whole).parts.map(textOf));
    expect(originals.size).toBe(parts.length);
    const verdicts = new Map<string, number>();
    const mutated = fc.tuple(
      fc.array(mutation, { minLength: 1, maxLength: 3 }),
      fc.integer({ min: 100, max: 20_000 }),
    );
    fc.assert(
      fc.property(mutated, ([mutations, size]) => {
        const text = mutations.reduce((sum, each) => each(sum), whole);
        const result = read(text, size);
        const { kind } = result.verdict;
        verdicts.set(kind, (verdicts.get(kind) ?? 0) + 1);
        for (const part of result.parts) {
          if (!originals.has(textOf(part))) throw new Error(`made up: ${textOf(part)}`);
        }
        if (kind === 'whole' && result.parts.length !== parts.length) {
          throw new Error('called whole, and is not');
        }
        if (kind === 'whole' && text.trim() !== whole.trim()) checkHarmless(text);
      }),
      { numRuns: 20_000 },
    );
    // The mutations are no good if they all do the same.
    expect(verdicts.get('in-part')).toBeGreaterThan(5_000);
    expect(verdicts.get('foreign')).toBeGreaterThan(100);
  });
});

/** What may be changed in a whole backup: nothing but white space, and the digits of sums are lower-case. */
function checkHarmless(text: string): void {
  const bare = (each: string) => each.replace(/\s/g, '');
  if (bare(text) !== bare(whole)) throw new Error(`called whole, and was changed: ${text}`);
}

const textOf = (part: BackupPart): string =>
  JSON.stringify(
    part.kind === 'record'
      ? part.record
      : { ...part.attachment, bytes: [...part.attachment.bytes] },
  );
