// What `npm run engines` needs beside Node and Chromium: Debian's packages, which it installs where it may.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { run, say } from './run-tool.mjs';

/** Two engines, the window and the screen of one of them, the sound server, WebKit's way to it, a reader of PDF. */
export const enginePackages = [
  'firefox-esr',
  'webkit2gtk-driver',
  'gjs',
  'gir1.2-webkit2-4.1',
  'xvfb',
  'pulseaudio',
  'pulseaudio-utils',
  'gstreamer1.0-pulseaudio',
  'gstreamer1.0-plugins-good',
  'gstreamer1.0-plugins-bad',
  'poppler-utils',
];

/**
 * What the search needs from the computer it runs on.
 * @typedef {object} PackageMachine
 * @property {boolean} isDebian
 * @property {boolean} isRoot
 * @property {(name: string) => boolean} isInstalled
 * @property {(names: readonly string[]) => Promise<unknown>} install
 */

/**
 * Sees to it that all packages are there. `elsewhere`: this machine cannot have them, or may not be given them;
 * `failed`: it should have them, but they could not be installed.
 * @param {PackageMachine} [machine]
 * @param {(line: string) => void} [tell]
 * @returns {Promise<{ kind: 'ready' } | { kind: 'elsewhere' | 'failed', why: string }>}
 */
export async function readyPackages(machine = thisDebian(), tell = say) {
  if (!machine.isDebian) {
    return {
      kind: 'elsewhere',
      why: `The three engines are walked on Debian only, with these packages: ${enginePackages.join(' ')}.`,
    };
  }
  const missing = () => enginePackages.filter((name) => !machine.isInstalled(name));
  const wanted = missing();
  if (wanted.length === 0) return { kind: 'ready' };
  const command = `apt-get install --no-install-recommends ${wanted.join(' ')}`;
  if (!machine.isRoot) {
    return { kind: 'elsewhere', why: `The three engines need more packages. As root: ${command}` };
  }
  tell(`Installing ${wanted.join(', ')}`);
  await machine.install(wanted);
  const left = missing();
  return left.length === 0
    ? { kind: 'ready' }
    : { kind: 'failed', why: `These packages could not be installed: ${left.join(', ')}.` };
}

/** The computer that runs this. @returns {PackageMachine} */
function thisDebian() {
  return {
    isDebian: existsSync('/etc/debian_version') && existsSync('/usr/bin/apt-get'),
    isRoot: process.getuid?.() === 0,
    isInstalled: (name) =>
      /^Status: install ok installed$/m.test(
        spawnSync('dpkg-query', ['-s', name], { encoding: 'utf8' }).stdout ?? '',
      ),
    install: async (names) => {
      const wait = ['-o', 'DPkg::Lock::Timeout=300'];
      await run('apt-get', [...wait, 'update']);
      await run('apt-get', [...wait, 'install', '-y', '--no-install-recommends', ...names], {
        DEBIAN_FRONTEND: 'noninteractive',
      });
    },
  };
}
