import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { findBrowser, type Machine, noBrowser } from '../../src/command-line/find-browser.mjs';
import { starts } from '../../src/command-line/this-machine.mjs';

/** A machine with the browsers `has`, to which a download or a package may add one; `asked` keeps what it was asked to do. */
function fakeMachine(of: {
  chromePath?: string;
  has?: readonly string[];
  /** There, but they do not start. */
  broken?: readonly string[];
  download?: 'works' | 'fails' | 'does not start';
  package?: 'works' | 'fails' | 'not allowed';
}) {
  const there = [...(of.broken ?? []), ...(of.has ?? [])];
  const working = new Set(of.has);
  const asked: string[] = [];
  const add = (path: string, works: boolean) => {
    there.push(path);
    if (works) working.add(path);
  };
  const machine: Machine = {
    chromePath: of.chromePath,
    places: async () => [...there],
    starts: (path) => working.has(path),
    download: async () => {
      asked.push('download');
      if (of.download === 'works') add('/downloaded/chrome', true);
      if (of.download === 'does not start') add('/downloaded/chrome', false);
    },
    installPackage:
      of.package === undefined || of.package === 'not allowed'
        ? null
        : async () => {
            asked.push('package');
            if (of.package === 'works') add('/packaged/chromium', true);
          },
  };
  return { machine, asked };
}

async function find(of: Parameters<typeof fakeMachine>[0]) {
  const { machine, asked } = fakeMachine(of);
  const told: string[] = [];
  const result = await findBrowser(machine, (line) => told.push(line));
  return { result, asked, told };
}

describe('the browser for the tests', () => {
  it('is the one that CHROME_PATH names, although others are there', async () => {
    const { result, asked } = await find({
      chromePath: '/mine/chrome',
      has: ['/usual/chromium', '/mine/chrome'],
    });
    expect(result).toEqual({ kind: 'found', path: '/mine/chrome' });
    expect(asked).toEqual([]);
  });

  it('is no other one when CHROME_PATH is wrong: a sentence names the path', async () => {
    const { result, asked } = await find({ chromePath: '/mine/typo', has: ['/usual/chromium'] });
    expect(result).toEqual({
      kind: 'none',
      why: 'CHROME_PATH names /mine/typo, but no browser starts there.',
    });
    expect(asked).toEqual([]);
  });

  it('is the first installed one that starts, and then nothing is installed', async () => {
    const { result, asked, told } = await find({
      broken: ['/usual/stub'],
      has: ['/usual/chromium', '/usual/chrome'],
    });
    expect(result).toEqual({ kind: 'found', path: '/usual/chromium' });
    expect(asked).toEqual([]);
    expect(told).toEqual([]);
  });

  it("is Playwright's own where none is installed", async () => {
    const { result, asked, told } = await find({ download: 'works', package: 'works' });
    expect(result).toEqual({ kind: 'found', path: '/downloaded/chrome' });
    expect(asked).toEqual(['download']);
    expect(told).toHaveLength(1);
  });

  it.each(['fails', 'does not start'] as const)(
    "is the system's package where the download %s and packages may be installed",
    async (download) => {
      const { result, asked, told } = await find({ download, package: 'works' });
      expect(result).toEqual({ kind: 'found', path: '/packaged/chromium' });
      expect(asked).toEqual(['download', 'package']);
      expect(told).toHaveLength(2);
    },
  );

  it.each(['fails', 'not allowed'] as const)(
    'is none where the download fails and the package %s: a sentence says what to install',
    async (installing) => {
      const { result } = await find({ download: 'fails', package: installing });
      expect(result).toEqual({ kind: 'none', why: noBrowser });
      expect(noBrowser).toContain('install one');
      expect(noBrowser).toContain('CHROME_PATH');
    },
  );
});

describe('a file', () => {
  it('that ends with an error or is not there is no browser', () => {
    const folder = mkdtempSync(join(tmpdir(), 'ringwright-stub-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const stub = join(folder, 'chromium');
    // On Windows the file is not asked, so only its absence counts there.
    writeFileSync(stub, '#!/bin/sh\nexit 1\n', { mode: 0o755 });
    expect(starts(stub)).toBe(process.platform === 'win32');
    expect(starts(join(folder, 'none'))).toBe(false);
    expect(starts(process.execPath)).toBe(true);
  });
});
