// What `vite build` left in dist/, and what its service worker will keep.
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

export const distFolder = join(import.meta.dirname, '..', '..', 'dist');

/** All files of dist/, as paths with forward slashes. */
export const builtFiles = (): readonly string[] =>
  readdirSync(distFolder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(distFolder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();

export const readBuilt = (file: string): Buffer => readFileSync(join(distFolder, file));

/** What the service worker knows of a file. */
export interface KeptFile {
  readonly path: string;
  /** SHA-256, base64. */
  readonly hash: string;
}

/** The list at the end of the service worker's script, in the order in which it stands there. */
const listIn = (worker: string): readonly KeptFile[] =>
  JSON.parse(/(\[\{"path":.*\])\)\);\s*$/.exec(worker)?.[1] ?? '[]');

export const keptFiles = (): readonly KeptFile[] => listIn(readBuilt('sw.js').toString());

/** Paths of all files that the service worker of the build in `directory` keeps. */
export const precachedIn = (directory: string): readonly string[] =>
  listIn(readFileSync(join(directory, 'sw.js'), 'utf8')).map(({ path }) => path);

/** Paths of all files that the service worker keeps. */
export const precachedFiles = (): readonly string[] => keptFiles().map(({ path }) => path);

/** Scripts that must be there before the first screen: the entry of index.html and all it imports statically. */
export function firstScripts(): readonly string[] {
  const html = readBuilt('index.html').toString();
  const waiting = [...html.matchAll(/<script[^>]+src="\.?\/?([^"]+\.js)"/g)].map(
    ([, src = '']) => src,
  );
  const found = new Set<string>();
  for (let script = waiting.pop(); script !== undefined; script = waiting.pop()) {
    if (found.has(script)) continue;
    found.add(script);
    const folder = script.split('/').slice(0, -1).join('/');
    const text = readBuilt(script).toString();
    for (const [, specifier = ''] of text.matchAll(
      /(?:\bimport|\bfrom)\s*["'](\.{1,2}\/[^"']+\.js)["']/g,
    )) {
      waiting.push(join(folder, specifier).split(sep).join('/'));
    }
  }
  return [...found];
}
