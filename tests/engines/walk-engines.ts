// Leads the three engines through the app, one after the other, and says how each step went.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AppHost } from './app-host';
import { chromiumEngine } from './chromium-engine';
import type { Engine } from './engine';
import {
  type EngineOutcome,
  engineReport,
  faultsOf,
  type StepOutcome,
  withReport,
} from './engines-table';
import { firefoxEngine } from './firefox-engine';
import { stopEverything } from './own-process';
import { type Screen, startScreen } from './screen';
import { textSeen } from './seen';
import { type SoundServer, startSoundServer } from './sound-server';
import { listenedTruth } from './strike-files';
import { buildVersion, versions } from './two-versions';
import { messageOf } from './until';
import { Walk } from './walk';
import { walkSteps } from './walk-steps';
import { webkitEngine } from './webkit-engine';

export interface WalkOptions {
  readonly projectFolder: string;
  /** Path of a Chromium. */
  readonly chromium: string;
  /** Beginnings of the names of the engines to walk; all without it. */
  readonly only: readonly string[];
  /** Whether the table goes into README. */
  readonly intoReadme: boolean;
  readonly say: (line: string) => void;
}

/** Resolves to the exit code: 0 if every step of every engine went well. Leaves nothing running. */
export async function walkEngines(options: WalkOptions): Promise<number> {
  const { projectFolder, say, chromium } = options;
  const engines = [
    chromiumEngine(chromium),
    firefoxEngine('firefox-esr'),
    webkitEngine(join(projectFolder, 'tests', 'engines', 'webkit-window.js')),
  ].filter(
    ({ name }) => options.only.length === 0 || options.only.some((word) => name.startsWith(word)),
  );
  const folder = mkdtempSync(join(tmpdir(), 'ringwright-engines-'));
  let sound: SoundServer | null = null;
  let screen: Screen | null = null;
  const stopAll = async () => {
    await screen?.stop();
    await sound?.stop();
    await stopEverything();
    rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
  };
  const leaving = onSignal(stopAll);
  try {
    const builds = { first: join(folder, 'first'), next: join(folder, 'next') };
    say('Building two versions of the app');
    await buildVersion(versions.first, builds.first);
    await buildVersion(versions.next, builds.next);
    sound = await startSoundServer(folder);
    screen = await startScreen(sound.environment);
    const environment = { ...sound.environment, DISPLAY: screen.display };
    const outcomes: EngineOutcome[] = [];
    for (const engine of engines) {
      const own = join(folder, `walk-${outcomes.length}`);
      mkdirSync(own);
      outcomes.push(await walkOne(engine, { sound, environment, builds, folder: own }, say));
    }
    return tell(outcomes, options);
  } finally {
    leaving();
    await stopAll();
  }
}

/** Has `stop` done before a signal ends this process; returns what takes that back. */
function onSignal(stop: () => Promise<void>): () => void {
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  const end = () => void stop().finally(() => process.exit(1));
  for (const signal of signals) process.once(signal, end);
  return () => {
    for (const signal of signals) process.off(signal, end);
  };
}

type Surroundings = Omit<ConstructorParameters<typeof Walk>[0], 'engine' | 'host'>;

async function walkOne(
  engine: Engine,
  surroundings: Surroundings,
  say: (line: string) => void,
): Promise<EngineOutcome> {
  const host = new AppHost();
  const walk = new Walk({ ...surroundings, engine, host });
  const steps: StepOutcome[] = [];
  try {
    await host.serve(surroundings.builds.first);
    for (const { name, run } of walkSteps) {
      const began = Date.now();
      try {
        if (steps.length > 0) await walk.toFirstScreen();
        const found = await run(walk);
        steps.push({ step: name, trouble: null, ...found });
        say(`${engine.name}: ${name}: ok (${Math.round((Date.now() - began) / 1000)} s)`);
      } catch (error) {
        const trouble = `${messageOf(error)}. The screen says: ${await onScreen(walk)}`;
        steps.push({ step: name, trouble });
        say(`${engine.name}: ${name}: FAILED: ${trouble}`);
        // The next step may go well all the same.
        await walk.start().catch((again) => say(`${engine.name}: ${messageOf(again)}`));
      }
    }
  } finally {
    await walk.close().catch((error) => say(`${engine.name}: ${messageOf(error)}`));
    await host.stop();
  }
  return { engine: engine.name, version: walk.version, steps };
}

const shownText = 300;

const onScreen = (walk: Walk): Promise<string> =>
  Promise.resolve()
    .then(() => walk.read(textSeen))
    .then(
      (text) => `“${text.slice(0, shownText)}”`,
      (error) => `nothing (${messageOf(error)})`,
    );

function tell(outcomes: readonly EngineOutcome[], options: WalkOptions): number {
  const { projectFolder, intoReadme, say } = options;
  const report = engineReport(outcomes, {
    day: new Date().toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' }),
    system: systemName(),
    truth: listenedTruth,
  });
  say(`\n${report}\n`);
  const faults = faultsOf(outcomes, listenedTruth);
  for (const fault of faults) say(fault);
  if (faults.length > 0) return 1;
  if (intoReadme) {
    const readme = join(projectFolder, 'README.md');
    writeFileSync(readme, withReport(readFileSync(readme, 'utf8'), report));
    say('The table is in README.md now.');
  }
  return 0;
}

/** "Debian 12.15", as well as the system says it. */
function systemName(): string {
  const about = readFileSync('/etc/os-release', 'utf8');
  const name = /^PRETTY_NAME="?([^"\n]*)"?$/m.exec(about)?.[1] ?? 'Linux';
  return name;
}
