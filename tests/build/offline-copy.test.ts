import { expect, test } from 'vitest';
import { builtFiles, precachedFiles, readBuilt } from './built-files';

test('the service worker keeps every built file but itself and the icons of an installed app, each once', () => {
  const notNeeded = /^sw\.js$|\.map$|^(?:icon-(?:maskable-)?\d+|apple-touch-icon)\.png$/;
  const wanted = builtFiles().filter((file) => !notNeeded.test(file));
  expect([...precachedFiles()].sort()).toEqual(wanted);
});

test('the capture worklet and the analysis worker are files of their own and are kept', () => {
  const scripts = precachedFiles().filter((file) => file.endsWith('.js'));
  const texts = scripts.map((file) => readBuilt(file).toString());
  expect(texts.filter((text) => text.includes('registerProcessor('))).toHaveLength(1);
  // The page and the worker: everything that is not lazy.
  expect(scripts.length).toBeGreaterThanOrEqual(3);
});

test('no source map is kept', () => {
  expect(precachedFiles().filter((file) => file.endsWith('.map'))).toEqual([]);
});

test('the service worker waits to be asked before it replaces the running app, and takes over the first page', () => {
  const worker = readBuilt('sw.js').toString();
  expect(worker).toContain('SKIP_WAITING');
  expect(worker).toContain('clients.claim()');
  expect(worker).toContain('index.html');
});

test('the list that the page compares its copy with names every page, script, style and typeface', () => {
  const listed: unknown = JSON.parse(readBuilt('files.json').toString());
  const wanted = builtFiles().filter(
    (file) => file !== 'sw.js' && /\.(?:html|js|css|woff2)$/.test(file),
  );
  expect(listed).toEqual(wanted);
});

test('the typeface goes out with its licence, as that licence asks', () => {
  const licence = readBuilt('barlow-licence.txt').toString();
  expect(licence).toContain('Copyright 2017 The Barlow Project Authors');
  expect(licence).toContain('SIL OPEN FONT LICENSE Version 1.1');
});
