import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { firstScripts, precachedFiles, readBuilt } from './built-files';

const kilobyte = 1000;

test('the first JavaScript is at most 40 kB gzip', () => {
  const scripts = firstScripts();
  const sizes = scripts.map((script) => ({ script, bytes: gzipSync(readBuilt(script)).length }));
  const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
  expect(scripts.length).toBeGreaterThan(0);
  expect(total, JSON.stringify(sizes)).toBeGreaterThan(1 * kilobyte);
  expect(total, JSON.stringify(sizes)).toBeLessThanOrEqual(40 * kilobyte);
});

/** Hearing and seeing each partial of a strike by itself took it over the 700 kB on disk that it kept to before. */
test('everything precached is at most 300 kB as it travels, and 750 kB on disk', () => {
  const sizes = precachedFiles().map((file) => {
    const built = readBuilt(file);
    // Fonts are compressed already.
    const travels = Math.min(built.length, gzipSync(built).length);
    return { file, travels, bytes: built.length };
  });
  const travels = sizes.reduce((sum, each) => sum + each.travels, 0);
  const bytes = sizes.reduce((sum, each) => sum + each.bytes, 0);
  expect(bytes, JSON.stringify(sizes)).toBeGreaterThan(10 * kilobyte);
  expect(travels, JSON.stringify(sizes)).toBeLessThanOrEqual(300 * kilobyte);
  expect(bytes, JSON.stringify(sizes)).toBeLessThanOrEqual(750 * kilobyte);
});
