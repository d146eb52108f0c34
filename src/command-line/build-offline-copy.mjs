// The part of the build that makes the offline copy: what each file must be, the service worker, and the start watch.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { build } from 'vite';

const watchScript = 'src/offline/start/watch-start.ts';
const workerScript = 'src/offline/worker/service-worker.ts';
const worker = 'sw.js';

/** The icons are for the phone's own screens, which copy them when the app is installed. */
const notKept = /^sw\.js$|\.map$|^(?:icon-(?:maskable-)?\d+|apple-touch-icon)\.png$/;

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
    async generateBundle(_options, bundle) {
      const page = bundle['index.html'];
      if (page?.type !== 'asset') throw new Error('The build made no index.html.');
      const watch = await plainScript(watchScript);
      const watchFile = `assets/watch-start-${hashOf(watch).slice(0, 8).replace(/\W/g, '_')}.js`;
      this.emitFile({ type: 'asset', fileName: watchFile, source: watch });
      const tag = `<script async crossorigin src="./${watchFile}" integrity="sha256-${hashOf(watch)}"></script>`;
      page.source = String(page.source)
        .replaceAll(/(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"/g, (attribute, file) => {
          const part = bundle[file];
          if (!part) throw new Error(`The page names ${file}, which the build has not made.`);
          return `${attribute} integrity="sha256-${hashOf(part.type === 'chunk' ? part.code : part.source)}"`;
        })
        .replace('</title>', `</title>\n    ${tag}`);
    },
    // The files of public/ are there by then as well.
    closeBundle: {
      order: 'post',
      async handler() {
        const files = readdirSync(outDir, { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile())
          .map((entry) => relative(outDir, join(entry.parentPath, entry.name)))
          .map((path) => path.split(sep).join('/'))
          .filter((path) => !notKept.test(path))
          .sort()
          .map((path) => ({ path, hash: hashOf(readFileSync(join(outDir, path))) }));
        const list = JSON.stringify(files);
        const version = createHash('sha256').update(list).digest('hex').slice(0, 16);
        const script = await plainScript(workerScript);
        // One expression from the first sign to the last: a script that was cut anywhere is none, and is not installed.
        writeFileSync(
          join(outDir, worker),
          `(((builtVersion,builtFiles)=>{${script}\n})("${version}",${list}));\n`,
        );
      },
    },
  };
}

/**
 * A script and all it imports as one plain script, as service workers and early tags want it.
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
