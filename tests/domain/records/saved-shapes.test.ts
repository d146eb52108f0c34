// Records as the first version that was ever given to anyone wrote them. These files never change.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitsDigest } from '../../../src/domain/records/record-digest';
import { restoreAttachment } from '../../../src/domain/records/restore/restore-attachment';
import { restoreRecord } from '../../../src/domain/records/restore/restore-record';

const folder = new URL('../../saved-shapes/shape-1/', import.meta.url);
const files = readdirSync(folder);
const isAttachment = (file: string): boolean => /^(photo|sound)\.json$/.test(file);
const saved = (file: string) => JSON.parse(readFileSync(new URL(file, folder), 'utf8'));

describe('records saved in shape 1', () => {
  it('are there in every kind', () => {
    const kinds = new Set(files.map((file) => saved(file).kind));
    expect([...kinds].sort()).toEqual(
      [
        'blows',
        'erasure',
        'knock-check',
        'mark',
        'pan-edit',
        'photo',
        'reading',
        'round',
        'round-end',
        'sound',
        'stopgap',
        'tuner-visit',
      ].sort(),
    );
  });

  it.each(files.filter((file) => !isAttachment(file)))('restore unchanged: %s', (file) => {
    const record = saved(file);
    expect(restoreRecord(record)).toEqual({ kind: 'restored', record, repairs: [] });
  });

  it('fit the digest that they carry, which says what was made of them since', () => {
    const withDigest = files.map(saved).filter(({ digest }) => digest !== undefined);
    expect(withDigest).toHaveLength(10);
    for (const record of withDigest) {
      expect(fitsDigest(record)).toBe(true);
      for (const field of Object.keys(record).filter((name) => name !== 'digest')) {
        expect(fitsDigest({ ...record, [field]: 'changed' })).toBe(false);
      }
    }
  });

  it.each(files.filter(isAttachment))('restore unchanged: %s', (file) => {
    const stored = saved(file);
    const attachment = { ...stored, bytes: new Uint8Array(Buffer.from(stored.bytes, 'base64')) };
    expect(restoreAttachment(attachment)).toEqual({ kind: 'restored', attachment, repairs: [] });
  });
});
