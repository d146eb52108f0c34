import { createHash } from 'node:crypto';
import { Script } from 'node:vm';
import { expect, test } from 'vitest';
import { builtFiles, keptFiles, precachedFiles, readBuilt } from './built-files';

const hashOf = (file: string): string =>
  createHash('sha256').update(readBuilt(file)).digest('base64');

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

test('every kept file, the start page too, is listed with the hash of what was built', () => {
  expect(keptFiles().length).toBeGreaterThan(40);
  for (const { path, hash } of keptFiles()) expect(hash, path).toBe(hashOf(path));
});

test('the start page names the hash of each script and style that it loads', () => {
  const page = readBuilt('index.html').toString();
  const loaded = [
    ...page.matchAll(/<(?:script|link)[^>]+(?:src|href)="\.\/(assets\/[^"]+)"[^>]*>/g),
  ];
  expect(loaded.length).toBeGreaterThanOrEqual(3);
  for (const [tag, file = ''] of loaded) {
    expect(tag, file).toContain(`integrity="sha256-${hashOf(file)}"`);
  }
});

test('the start page names the hashes of what the rack loads by itself, too', () => {
  const named = /data-parts="([^"]+)"/.exec(readBuilt('index.html').toString())?.[1]?.split(' ');
  const parts = Array.from({ length: (named?.length ?? 0) / 2 }, (_, k) => k);
  for (const name of [
    'rack-store',
    'renew-card',
    'browser-arrivals',
    'service-worker-updates',
    'restore-settings',
  ]) {
    expect(
      named?.filter((part) => part.startsWith(`./assets/${name}-`)),
      name,
    ).toHaveLength(1);
  }
  for (const k of parts) {
    expect(named?.[2 * k + 1]).toBe(`sha256-${hashOf(named?.[2 * k]?.slice(2) ?? '')}`);
  }
});

test('a service worker that was cut anywhere is no script, so no browser installs it', () => {
  const worker = readBuilt('sw.js').toString().trimEnd();
  expect(() => new Script(worker)).not.toThrow();
  const whole = worker.replace(/;$/, '').length;
  for (let part = 1; part <= 400; part++) {
    // Spread over all of it, the last signs one by one.
    const length = part <= 200 ? Math.floor((part / 201) * whole) : whole - (part - 200);
    expect(() => new Script(worker.slice(0, length)), `${length} signs`).toThrow(SyntaxError);
  }
});

test('the service worker asks nobody but the network for anything: it is one file', () => {
  expect(readBuilt('sw.js').toString()).not.toMatch(/importScripts|\bimport\b/);
});

test('the typeface goes out with its licence, as that licence asks', () => {
  const licence = readBuilt('barlow-licence.txt').toString();
  expect(licence).toContain('Copyright 2017 The Barlow Project Authors');
  expect(licence).toContain('SIL OPEN FONT LICENSE Version 1.1');
});
