// The part of the build that makes the offline copy: what each file must be, the service worker, and the start watch.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { build } from 'vite';

const watchScript = 'src/offline/start/watch-start.ts';
/** What vite-plugin-pwa has made of src/offline/worker, in dist/. */
const compiledWorker = 'service-worker.js';

/** The icons are for the phone's own screens, which copy them when the app is installed. */
const notKept = /^sw\.js$|\.map$|^(?:icon-(?:maskable-)?\d+|apple-touch-icon)\.png$/;

/** Chunks that the first script imports after a tap only. All others it asks for by itself. */
const afterTap = /^(?:read-wav|screen-loaders|late-models)-/;
const imports = /\b(?:import\s*\(|from)\s*["'`]\.\/([^"'`]+\.js)["'`]/g;

/** @param {string | Uint8Array} bytes */
const hashOf = (bytes) => createHash('sha256').update(bytes).digest('base64');

/** @returns {import('vite').Plugin} */
export function offlineCopy() {
  let outDir = '';
  return {
    name: 'offline-copy',
    apply: 'build',
    enforce: 'post',
    configResolved(config) {
      outDir = resolve(config.root, config.build.outDir);
    },
    // Everything is written by then: the files of public/, and the service worker by vite-plugin-pwa.
    closeBundle: {
      order: 'post',
      async handler() {
        await writeWatch(outDir);
        writeWorker(outDir);
      },
    },
  };
}

/**
 * The start watch, and in the page the hash of each script and style that it loads.
 * @param {string} outDir
 */
async function writeWatch(outDir) {
  const watch = await plainScript(watchScript);
  const file = `assets/watch-start-${hashOf(watch).slice(0, 8).replace(/\W/g, '_')}.js`;
  writeFileSync(join(outDir, file), watch);
  const tag = `<script async crossorigin src="./${file}" data-parts="${lateParts(outDir)}"></script>`;
  const page = readFileSync(join(outDir, 'index.html'), 'utf8')
    .replace('</title>', `</title>\n    ${tag}`)
    .replaceAll(/(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"/g, (attribute, part) => {
      const hash = hashOf(readFileSync(join(outDir, part)));
      return `${attribute} integrity="sha256-${hash}"`;
    });
  writeFileSync(join(outDir, 'index.html'), page);
}

/**
 * What the first script loads by itself after it has begun, and the chunks that this imports: "path hash path hash".
 * @param {string} outDir
 */
function lateParts(outDir) {
  /** @param {string} name */
  const read = (name) => readFileSync(join(outDir, 'assets', name), 'utf8');
  const first = /src="\.\/assets\/([^"]+\.js)"/.exec(
    readFileSync(join(outDir, 'index.html'), 'utf8'),
  )?.[1];
  if (!first) throw new Error('The page loads no script.');
  const found = new Set([first]);
  for (const name of found) {
    for (const [, imported = ''] of read(name).matchAll(imports)) {
      if (!afterTap.test(imported)) found.add(imported);
    }
  }
  found.delete(first);
  return [...found].map((name) => `./assets/${name} sha256-${hashOf(read(name))}`).join(' ');
}

/**
 * The service worker as `sw.js`: the compiled script, with the list of what it keeps.
 * @param {string} outDir
 */
function writeWorker(outDir) {
  const compiled = join(outDir, compiledWorker);
  const script = readFileSync(compiled, 'utf8');
  rmSync(compiled);
  const files = readdirSync(outDir, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(outDir, join(entry.parentPath, entry.name)))
    .map((path) => path.split(sep).join('/'))
    .filter((path) => !notKept.test(path))
    .sort()
    .map((path) => ({ path, hash: hashOf(readFileSync(join(outDir, path))) }));
  const list = JSON.stringify(files);
  const version = createHash('sha256').update(list).digest('hex').slice(0, 16);
  // One expression from the first character to the last: a script cut off anywhere is invalid, and is not installed.
  writeFileSync(
    join(outDir, 'sw.js'),
    `(((builtVersion,builtFiles)=>{${script}\n})("${version}",${list}));\n`,
  );
}

/**
 * A script and all it imports as one plain script, as an early tag wants it.
 * @param {string} entry
 * @returns {Promise<string>}
 */
async function plainScript(entry) {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      target: 'es2022',
      write: false,
      lib: { entry, formats: ['iife'], name: 'script' },
    },
  });
  const [script] = Array.isArray(built) && built[0] ? built[0].output : [];
  if (!script) throw new Error(`${entry} was not built.`);
  return script.code;
}
