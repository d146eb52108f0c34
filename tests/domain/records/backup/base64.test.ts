import { describe, expect, it } from 'vitest';
import { fromBase64, toBase64 } from '../../../../src/domain/records/backup/base64';
import { crc32Of } from '../../../../src/domain/records/backup/crc-32';
import * as fc from '../../../properties';

describe('base64', () => {
  it.each([
    // RFC 4648, section 10.
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy'],
  ])('of "%s" is "%s"', (text, expected) => {
    expect(toBase64(new Uint8Array(Buffer.from(text)))).toBe(expected);
    expect(Buffer.from(fromBase64(expected) ?? []).toString()).toBe(text);
  });

  it('agrees with Node for any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 10_000, size: 'max' }), (bytes) => {
        const text = toBase64(new Uint8Array(bytes));
        expect(text).toBe(Buffer.from(bytes).toString('base64'));
        expect(Buffer.from(fromBase64(text) ?? []).equals(Buffer.from(bytes))).toBe(true);
      }),
    );
  });

  it.each(['Zg', 'Zg=', 'Zh==', 'Zm9=', '=Zg=', 'Z===', 'Zm9v\n', 'Zm 9', 'Zm-_', 'Zmé9'])(
    'is not "%s"',
    (text) => {
      expect(fromBase64(text)).toBeNull();
    },
  );
});

describe('CRC-32', () => {
  it('has the check value of the standard', () => {
    // "123456789" → cbf43926: check value of CRC-32 in the catalogue of parametrised CRC algorithms (from memory).
    expect(crc32Of('123456789')).toBe('cbf43926');
    expect(crc32Of('')).toBe('00000000');
  });
});
