// Starts the project's tools as child processes, the same way on every system.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { constants, setPriority } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json. */
export const projectFolder = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Prints one line for the person at the terminal. @param {string} line */
export const say = (line) => process.stdout.write(`${line}\n`);

/**
 * Runs a program in the project folder with its output on this terminal; resolves to its exit code.
 * @param {string} program
 * @param {readonly string[]} parameters
 * @param {Readonly<Record<string, string>>} [environment] added to this process's own
 * @returns {Promise<number>}
 */
export function run(program, parameters, environment = {}) {
  return new Promise((done) => {
    const child = spawn(program, parameters, {
      cwd: projectFolder,
      env: { ...process.env, ...environment },
      stdio: 'inherit',
    });
    child.once('error', (error) => {
      say(error.message);
      done(127);
    });
    child.once('close', (code) => done(code ?? 1));
  });
}

/**
 * Runs a script of node_modules with this very Node; resolves to its exit code.
 * @param {string} script path inside node_modules
 * @param {readonly string[]} parameters
 * @param {Readonly<Record<string, string>>} [environment]
 */
export const runScript = (script, parameters, environment) =>
  run(process.execPath, [join(projectFolder, 'node_modules', script), ...parameters], environment);

/**
 * The same alongside something that must not wait for it, with what is left of the processors. What it prints comes all
 * at once, when `show` is called.
 * @param {string} script path inside node_modules
 * @param {readonly string[]} parameters
 * @param {Readonly<Record<string, string>>} [environment]
 * @returns {{ readonly exitCode: Promise<number>, show(): void }}
 */
export function runScriptBehind(script, parameters, environment = {}) {
  const child = spawn(
    process.execPath,
    [join(projectFolder, 'node_modules', script), ...parameters],
    {
      cwd: projectFolder,
      env: { ...process.env, ...environment },
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  // What it starts inherits this.
  if (child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_LOW);
  /** @type {Buffer[]} */
  const printed = [];
  child.stdout.on('data', (chunk) => printed.push(chunk));
  child.stderr.on('data', (chunk) => printed.push(chunk));
  return {
    exitCode: new Promise((done) => {
      child.once('error', (error) => {
        printed.push(Buffer.from(`${error.message}\n`));
        done(127);
      });
      child.once('close', (code) => done(code ?? 1));
    }),
    show: () => void process.stdout.write(Buffer.concat(printed)),
  };
}

/**
 * Installs the packages of the lock file when one of them is missing or another version; resolves to npm's exit code.
 * @returns {Promise<number>}
 */
export async function installPackages() {
  if (packagesInstalled()) return 0;
  say('Installing packages (npm ci)');
  // Under `npm start` and `npm test` npm tells where its own script lies; on Windows npm itself is no program.
  const npm = process.env['npm_execpath'];
  return npm?.endsWith('.js') || npm?.endsWith('.cjs')
    ? run(process.execPath, [npm, 'ci', '--no-audit', '--no-fund'])
    : run('npm', ['ci', '--no-audit', '--no-fund']);
}

/** True if node_modules holds the versions of the lock file. Optional packages may be absent. */
export function packagesInstalled() {
  const installedList = join(projectFolder, 'node_modules', '.package-lock.json');
  if (!existsSync(installedList)) return false;
  const wanted = packagesOf(join(projectFolder, 'package-lock.json'));
  const installed = packagesOf(installedList);
  return Object.entries(wanted).every(
    ([path, entry]) =>
      path === '' ||
      (entry.optional && !installed[path]) ||
      installed[path]?.version === entry.version,
  );
}

/**
 * @param {string} lockFile
 * @returns {Record<string, { version?: string, optional?: boolean }>}
 */
const packagesOf = (lockFile) => JSON.parse(readFileSync(lockFile, 'utf8')).packages;
