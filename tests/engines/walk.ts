// One engine on its way through the app: its browser, the host, the microphone, and waiting for what is meant.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { AppHost } from './app-host';
import type { Engine, EngineBrowser } from './engine';
import {
  aimExpression,
  expressionOf,
  hasMissed,
  named,
  type Point,
  type Target,
} from './find-on-page';
import { seen, textSeen } from './seen';
import type { SoundServer } from './sound-server';
import { listenedNote, listenedTruth, type Planted, writeStrike } from './strike-files';
import { until, within } from './until';

/** Longest wait (ms) for one thing to come about, for slow machines: what is waited for ends the waiting. */
const patience = 30_000;

export interface WalkSetup {
  readonly engine: Engine;
  readonly host: AppHost;
  readonly sound: SoundServer;
  /** What every browser is started with. */
  readonly environment: Readonly<Record<string, string>>;
  /** Folders of two builds of the app. */
  readonly builds: { readonly first: string; readonly next: string };
  /** An empty folder of this walk. */
  readonly folder: string;
}

export class Walk {
  readonly setup: WalkSetup;
  readonly outbox: string;
  #browser: EngineBrowser | null = null;
  #version = '';
  /** The path of the sound file of each note that was struck. */
  readonly #strikes = new Map<number, string>();

  constructor(setup: WalkSetup) {
    this.setup = setup;
    this.outbox = join(setup.folder, 'outbox');
    mkdirSync(this.outbox);
  }

  /** Version of the browser, once it has been started. */
  get version(): string {
    return this.#version;
  }

  get browser(): EngineBrowser {
    if (!this.#browser) throw new Error('the browser is not running');
    return this.#browser;
  }

  /** Closes the browser, if it runs, starts it with this profile and opens the app's first screen. */
  async start(profile = 'phone'): Promise<void> {
    await this.close();
    const { engine, environment, folder } = this.setup;
    this.#browser = await engine.start({
      environment,
      profile: join(folder, profile),
      outbox: this.outbox,
    });
    this.#version = this.#browser.version;
    await this.toFirstScreen();
  }

  async toFirstScreen(): Promise<void> {
    await within('opening the app', patience, this.browser.open(`${this.setup.host.address}#/`));
    await this.sees(seen.listen);
  }

  async close(): Promise<void> {
    const browser = this.#browser;
    this.#browser = null;
    if (browser) await within('closing the browser', patience, browser.close());
  }

  /** Runs `ask` in the page; it must not use anything from outside itself. Its answer travels as JSON. */
  async read<Answer>(ask: () => Answer): Promise<Answer> {
    return (await this.#evaluate(`(${ask})()`)) as Answer;
  }

  until<Answer>(
    what: string,
    look: () => Promise<Answer | null | undefined | false>,
    limit = patience,
  ): Promise<Answer> {
    return until(what, look, limit);
  }

  /** Waits until a text or a target can be seen. */
  async sees(what: string | Target): Promise<void> {
    if (typeof what === 'string') {
      await this.until(`“${what}”`, async () => (await this.read(textSeen)).includes(what));
    } else {
      await this.until(named(what), () => this.has(what));
    }
  }

  /** Whether it can be seen now. */
  async has(target: Target): Promise<boolean> {
    return (await this.#evaluate(`${expressionOf(target)} !== null`)) === true;
  }

  /** A starved machine loses so much sound that the app stops listening: does what it then asks for. */
  async keepListening(): Promise<void> {
    for (const target of [seen.goOnListening, ...seen.listenAgain]) {
      if (!(await this.has(target))) continue;
      await this.tap(target);
      await this.sees(seen.listening);
    }
  }

  /** Waits for it and taps on it; again if the screen moved under the tap. */
  async tap(target: Target): Promise<void> {
    const place = async () => (await this.#evaluate(aimExpression(target))) as Point | null;
    await this.until(named(target), async () => {
      const [before, now] = [await place(), await place()];
      if (!now || before?.x !== now.x || before.y !== now.y) return false;
      await within('a tap', patience, this.browser.clickAt(now));
      return (await this.#evaluate(hasMissed)) !== true;
    });
  }

  async type(target: Target, text: string): Promise<void> {
    await this.tap(target);
    await within('typing', patience, this.browser.typeKeys(text));
  }

  async choose(target: Target, path: string): Promise<void> {
    await this.sees(target);
    await within('a file', patience, this.browser.giveFile(expressionOf(target), path));
  }

  #evaluate(expression: string): Promise<unknown> {
    return within('an answer of the page', patience, this.browser.evaluate(expression));
  }

  /** Strikes a note before the microphone; resolves when its sound is over. */
  async strike(note: number, truth: Planted = listenedTruth): Promise<void> {
    const path = this.#strikes.get(note) ?? writeStrike(this.setup.folder, note, truth);
    this.#strikes.set(note, path);
    await this.setup.sound.play(path);
  }

  strikeListenedNote(): Promise<void> {
    return this.strike(listenedNote);
  }
}
