import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { firstScripts, precachedFiles, readBuilt } from './built-files';

const kilobyte = 1000;

test('the first JavaScript is at most 45 kB gzip', () => {
  const scripts = firstScripts();
  const sizes = scripts.map((script) => ({ script, bytes: gzipSync(readBuilt(script)).length }));
  const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
  expect(scripts.length).toBeGreaterThan(0);
  expect(total, JSON.stringify(sizes)).toBeGreaterThan(1 * kilobyte);
  expect(total, JSON.stringify(sizes)).toBeLessThanOrEqual(45 * kilobyte);
});

test('everything precached is at most 300 kB on disk', () => {
  const sizes = precachedFiles().map((file) => ({ file, bytes: readBuilt(file).length }));
  const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
  expect(total, JSON.stringify(sizes)).toBeGreaterThan(10 * kilobyte);
  expect(total, JSON.stringify(sizes)).toBeLessThanOrEqual(300 * kilobyte);
});
