import { describe, expect, it } from 'vitest';
import { enginePackages, readyPackages } from '../../src/command-line/engine-packages.mjs';

/** A computer on which some packages are missing, and some cannot be had. */
function computer({
  isDebian = true,
  isRoot = true,
  missing = [] as readonly string[],
  unobtainable = [] as readonly string[],
}) {
  const absent = new Set(missing);
  const asked: string[][] = [];
  return {
    asked,
    isDebian,
    isRoot,
    isInstalled: (name: string) => !absent.has(name),
    install: async (names: readonly string[]) => {
      asked.push([...names]);
      for (const name of names) if (!unobtainable.includes(name)) absent.delete(name);
    },
  };
}
const silent = () => undefined;

describe('the packages of the three engines', () => {
  it('are left alone where all are there, whoever asks', async () => {
    const machine = computer({ isRoot: false });
    expect(await readyPackages(machine, silent)).toEqual({ kind: 'ready' });
    expect(machine.asked).toEqual([]);
  });

  it('are installed by root on Debian, only those that are missing', async () => {
    const machine = computer({ missing: ['gjs', 'xvfb'] });
    expect(await readyPackages(machine, silent)).toEqual({ kind: 'ready' });
    expect(machine.asked).toEqual([['gjs', 'xvfb']]);
  });

  it('that cannot be installed by root are a failure, and are named', async () => {
    const machine = computer({ missing: ['gjs', 'xvfb'], unobtainable: ['gjs'] });
    const found = await readyPackages(machine, silent);
    expect(found).toMatchObject({ kind: 'failed' });
    expect(found).toMatchObject({ why: expect.stringMatching(/: gjs\.$/) });
  });

  it('are not touched by others than root: the line to type is said', async () => {
    const machine = computer({ isRoot: false, missing: ['gjs', 'xvfb'] });
    expect(await readyPackages(machine, silent)).toMatchObject({
      kind: 'elsewhere',
      why: expect.stringContaining('apt-get install --no-install-recommends gjs xvfb'),
    });
    expect(machine.asked).toEqual([]);
  });

  it('are all named on another system', async () => {
    const machine = computer({ isDebian: false, missing: enginePackages });
    expect(await readyPackages(machine, silent)).toMatchObject({
      kind: 'elsewhere',
      why: expect.stringContaining(enginePackages.join(' ')),
    });
    expect(machine.asked).toEqual([]);
  });
});
