import { expect, test } from 'vitest';
import { builtFiles, readBuilt } from './built-files';

const page = () => readBuilt('index.html').toString();

function policy(): ReadonlyMap<string, readonly string[]> {
  const content =
    /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/i.exec(page())?.[1] ?? '';
  const directives = content.split(';').map((directive) => directive.trim().split(/\s+/));
  return new Map(directives.map(([name = '', ...sources]) => [name, sources]));
}

test('the page carries a strict Content-Security-Policy', () => {
  const directives = policy();
  expect(directives.get('default-src')?.every((s) => s === "'self'" || s === "'none'")).toBe(true);
  for (const [name, sources] of directives) {
    for (const source of sources) {
      expect(["'self'", "'none'", 'blob:', 'data:'], `${name} ${source}`).toContain(source);
    }
  }
  for (const name of ['script-src', 'worker-src', 'connect-src']) {
    const sources = directives.get(name) ?? directives.get('default-src') ?? [];
    expect(sources, name).not.toContain('blob:');
    expect(sources, name).not.toContain('data:');
  }
});

test('the page holds no inline script and no inline style', () => {
  expect(page()).not.toMatch(/<script(?![^>]*\bsrc=)[^>]*>/);
  expect(page()).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
});

test('nothing in the build is loaded from another host', () => {
  // Names of XML namespaces and links in licence notes are text, never fetched.
  const fetches =
    /(?:src|href)=["']https?:|url\(["']?https?:|@import\s+["']https?:|(?:import|fetch|importScripts|addModule|Worker|WebSocket)\s*\(\s*["'`](?:https?|wss?):/;
  for (const file of builtFiles().filter((name) =>
    /\.(?:html|css|js|svg|webmanifest)$/.test(name),
  )) {
    expect(fetches.exec(readBuilt(file).toString())?.[0], file).toBeUndefined();
  }
});

test('all paths in the page are relative, so that any folder can hold the app', () => {
  for (const [, path = ''] of page().matchAll(/(?:src|href)="([^"]+)"/g)) {
    expect(path).toMatch(/^(?:\.\/|assets\/|[\w-]+\.\w+$|#)/);
  }
});
