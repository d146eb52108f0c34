import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { TooLarge, unpackLimits, unpackText } from '../../../src/storage/backup/unpack-file';

const megabyte = 1024 * 1024;

/** All text that comes before the end or the error, as the lengths of its pieces. */
async function readAll(file: Blob, limits = unpackLimits) {
  const lengths: number[] = [];
  let text = '';
  let error: unknown = null;
  try {
    for await (const piece of unpackText(file, limits)) {
      lengths.push(piece.text.length);
      if (text.length < megabyte) text += piece.text;
    }
  } catch (caught) {
    error = caught;
  }
  const total = lengths.reduce((sum, length) => sum + length, 0);
  return { text, total, longest: Math.max(...lengths), error };
}

describe('a file', () => {
  it('is read as text, plain or packed, also where a letter lies across two pieces', async () => {
    const text = Array.from({ length: 60_000 }, (_, n) => `ñandú ♯♭ ${n * 7919} `).join('');
    const bytes = new TextEncoder().encode(text);
    for (const file of [new Blob([bytes]), new Blob([gzipSync(bytes)])]) {
      const read = await readAll(file);
      expect(read).toMatchObject({ total: text.length, error: null });
      expect(text.startsWith(read.text)).toBe(true);
    }
  });

  it('that is packed and cut off gives all that can be unpacked of it', async () => {
    const text = Array.from({ length: 5000 }, (_, n) => `${n * 7919} `).join('');
    const bytes = gzipSync(text);
    const { text: read, error } = await readAll(new Blob([bytes.subarray(0, bytes.length - 9)]));
    expect(error).toBeNull();
    // Of the nine bytes one may still have been part of the text; the sum and the length are eight.
    expect(read.length).toBeGreaterThan(text.length - 100);
    expect(text.startsWith(read)).toBe(true);
  });

  it('that grows without measure is left early, with no piece larger than a phone can hold', async () => {
    const bomb = new Blob([gzipSync(Buffer.alloc(300 * megabyte))]);
    const { total, longest, error } = await readAll(bomb);
    expect(error).toBeInstanceOf(TooLarge);
    expect(longest).toBeLessThan(9 * megabyte);
    expect(total).toBeLessThan(16 * megabyte);
  });

  it('that is too large is not even begun', async () => {
    const { total, error } = await readAll(new Blob(['12345']), { ...unpackLimits, fileBytes: 4 });
    expect(error).toBeInstanceOf(TooLarge);
    expect(total).toBe(0);
  });
});
