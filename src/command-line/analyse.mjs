// `npm run --silent analyse -- FILE... [--note D5] [--pan low-c-lead] [--a4 440]`: one JSON object per WAV file and line.
import { join } from 'node:path';
import { packagesInstalled, projectFolder } from './run-tool.mjs';

if (!packagesInstalled()) {
  process.stderr.write('The packages are not installed yet: run "npm ci" first.\n');
  process.exit(2);
}

const { runnerImport } = await import('vite');
/** @type {{ module: typeof import('./analyse-files') }} */
const { module } = await runnerImport(join(projectFolder, 'src/command-line/analyse-files.ts'), {
  configFile: false,
  envDir: false,
  root: projectFolder,
  // Standard output carries the results and nothing else.
  logLevel: 'silent',
});
process.exitCode = await module.analyseFiles(process.argv.slice(2), {
  // npm changes into the project folder and remembers where the person was.
  folder: process.env['INIT_CWD'] ?? process.cwd(),
  out: (line) => process.stdout.write(`${line}\n`),
  complain: (line) => process.stderr.write(`${line}\n`),
});
