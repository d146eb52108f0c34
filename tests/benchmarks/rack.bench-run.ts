// A band's rack of years: how long it takes to open it, a pan, a note's history, and to send it through a file.
// PANS sets the sizes ("10,100,1000"), STARTS how often each is opened. For a rack that takes long, FOLDER keeps it
// from one run to the next, PHASES ("fill,open,export,import") says what to do now, and SECONDS after how long
// filling stops, to go on in the next run. Prints a table; never fails by time.
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { runScript } from '../../src/command-line/run-tool.mjs';
import { serveStorePage } from '../browser/build-store-page';
import { notes, strikesOfReading } from '../browser/store-page/fill-rack';
import { print, printRacks, times } from './rack/print-rack';
import { type Phase, phases, RackFolder } from './rack/rack-figures';
import { runPhase } from './rack/rack-phases';

const {
  PANS = '10,100,1000',
  STARTS = '9',
  PHASES = phases.join(),
  FOLDER,
  SECONDS = 'Infinity',
} = process.env;
const sizes = PANS.split(',').map(Number);
const starts = Number(STARTS);
const wanted = PHASES.split(',').map(phaseOf);
const rounds = 50;
/** A database belongs to an address with its port; 0 is any free one. */
const port = FOLDER ? 4799 : 0;

function phaseOf(name: string): Phase {
  const phase = phases.find((each) => each === name);
  if (!phase) throw new Error(`There is no phase called ${name}; there are ${phases.join(', ')}.`);
  return phase;
}

test('the rack at every size', async () => {
  const parent = FOLDER ?? mkdtempSync(join(tmpdir(), 'ringwright-rack-'));
  mkdirSync(parent, { recursive: true });
  const app = mkdtempSync(join(tmpdir(), 'ringwright-app-'));
  const production = { NODE_ENV: 'production' };
  const building = ['build', '--logLevel', 'error', '--emptyOutDir', '--outDir', app];
  if (await runScript('vite/bin/vite.js', building, production)) throw new Error('no build');
  const served = await serveStorePage({ port, app });
  try {
    if (port !== 0 && new URL(served.address).port !== String(port)) {
      throw new Error(`Something else is at port ${port}, to which the racks of ${FOLDER} belong.`);
    }
    for (const pans of sizes) {
      const folder = new RackFolder(parent, pans);
      const { address, appAddress } = served;
      const task = { folder, pans, rounds, starts, address, appAddress, longest: +SECONDS };
      for (const phase of wanted) {
        folder.add(await runPhase[phase](task));
        const { filled, opened } = folder.figures;
        print(`${pans} pans: ${phase} is over, ${filled?.pans} are filled`);
        if (phase !== 'open' || !opened) continue;
        const { copy, rack, app, pan, note, load } = opened;
        const all = times(app.map((each) => each.all));
        print(
          `copy ${times(copy)}, rack ${times(rack)}, app ${all}, pan ${times(pan)}, note ${times(note)} ms, load ${load}`,
        );
      }
    }
    const columns = sizes.map((pans) => ({
      pans,
      strikes: pans * rounds * notes.length * strikesOfReading,
      figures: new RackFolder(parent, pans).figures,
    }));
    printRacks(columns, starts);
    expect(columns).toHaveLength(sizes.length);
  } finally {
    await served.close();
    rmSync(app, { recursive: true, force: true });
    if (!FOLDER) rmSync(parent, { recursive: true, force: true, maxRetries: 5 });
  }
});
