// An ear that says what a test tells it to: for states that a sound cannot bring about at will.
import type { Page } from 'playwright-core';
import type { Heard } from '../../src/domain/measurement/strike';
import { type StrikeSketch, strikeSample } from '../domain/reading/strike-sample';
import { type AppOptions, type OpenedApp, openApp } from './open-app';

declare global {
  interface Window {
    sayHeard?: (heard: unknown) => void;
    toldEar?: unknown[];
  }
}

/** Runs in the page before the app: takes the place of the analysis thread. */
export function standInEar(): void {
  const told: unknown[] = [];
  window.toldEar = told;
  class StandInWorker {
    onmessage: ((event: { data: unknown }) => void) | null = null;
    onerror: unknown = null;
    constructor() {
      window.sayHeard = (heard) => this.onmessage?.({ data: { type: 'heard', heard } });
    }
    postMessage(message: { type: string; context?: unknown; ticket?: number }): void {
      if (message.type === 'context') told.push(message.context);
      // A second of silence, where the sound of a strike is asked for.
      if (message.type === 'cut') {
        const sound = { samples: new Float32Array(48_000), sampleRate: 48_000 };
        const data = { type: 'cut', ticket: message.ticket, sound };
        setTimeout(() => this.onmessage?.({ data }));
      }
      if (message.type === 'hello') setTimeout(() => this.onmessage?.({ data: message }));
    }
    terminate(): void {
      this.onmessage = null;
    }
  }
  // Other threads are left as they are.
  const workers = new Proxy(window.Worker, {
    construct: (Real, [url, options]: [string | URL, WorkerOptions?]) =>
      /analysis/.test(String(url)) ? new StandInWorker() : new Real(url, options),
  });
  Object.defineProperty(window, 'Worker', { value: workers });
}

export interface ToldApp extends OpenedApp {
  /** The app hears these, one after the other. */
  say(...heard: readonly Heard[]): Promise<void>;
  /** The note the ear was last told to expect. */
  expectedNote(): Promise<number | null>;
}

/** The ear of this page, which is `standInEar`, says these, one after the other. */
export const sayHeard = (page: Page, heard: readonly Heard[]): Promise<void> =>
  page.evaluate((all) => {
    for (const one of all) window.sayHeard?.(one);
  }, heard);

let lastEvent = 0;

/** As if the note had been struck so often and heard the same each time; D5, 9 cents flat, unless told. */
export const tellStrikes = (page: Page, count: number, sketch: StrikeSketch = {}): Promise<void> =>
  sayHeard(
    page,
    Array.from({ length: count }, () =>
      strikeSample({ fundamental: -9, octave: -5, third: 2, ...sketch, event: ++lastEvent }),
    ),
  );

/** Waits until the page listens, to what it will be told. */
export const untilListening = (page: Page): Promise<void> =>
  page.locator('[data-microphone="listening"], [data-microphone="silent"]').waitFor();

/** The listening screen with the microphone open, hearing only what it is told. */
export async function openToldApp(options: AppOptions = {}): Promise<ToldApp> {
  const app = await openApp('#/listen', { ...options, beforeApp: standInEar });
  await app.page.getByRole('button', { name: 'Listen' }).click();
  await untilListening(app.page);
  return {
    ...app,
    say: (...heard) => sayHeard(app.page, heard),
    expectedNote: () =>
      app.page.evaluate(
        () => (window.toldEar?.at(-1) as { expected: number | null } | undefined)?.expected ?? null,
      ),
  };
}
