// The voice of a guided round: it names the next note between strikes, and never speaks while one is measured.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { defaultSettings } from '../../src/domain/settings/settings';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { installStruckPan, takePan } from './struck-pan';

interface Said {
  readonly text: string;
  readonly isLocal: boolean;
  /** Seconds since the page was opened. */
  readonly from: number;
  to: number;
  /** The note the screen asked for when it had been said. */
  asked: number;
}

declare global {
  interface Window {
    said: Said[];
    struckAt: number[];
    /** Strikes what is asked for while nothing is said, until so many notes are done. */
    playAlong(until: number): Promise<void>;
  }
}

/** Seconds that the ear takes at most to settle a strike: nothing may be said before. */
const measuring = 0.6;

/** Runs in the page before the app: a voice that writes down when it says what, and takes 0.7 s for it. */
function installVoice(): void {
  const seconds = () => performance.now() / 1000;
  const asked = () => document.querySelector<HTMLElement>('.round')?.dataset['next'] ?? '';
  const done = () => Number(document.querySelector<HTMLElement>('.round')?.dataset['done']);
  let speaking = 0;
  window.said = [];
  window.struckAt = [];
  const voice = (lang: string, localService: boolean) =>
    ({ lang, localService, name: lang, default: false, voiceURI: lang }) as SpeechSynthesisVoice;
  class Utterance extends EventTarget {
    readonly text: string;
    voice: SpeechSynthesisVoice | null = null;
    lang = '';
    onend: (() => void) | null = null;
    onerror: (() => void) | null = null;
    constructor(text: string) {
      super();
      this.text = text;
    }
  }
  Object.defineProperty(window, 'SpeechSynthesisUtterance', { value: Utterance });
  Object.defineProperty(window, 'speechSynthesis', {
    value: {
      getVoices: () => [voice('en-GB', false), voice('en-GB', true)],
      cancel: () => undefined,
      speak(speech: Utterance) {
        const isLocal = speech.voice?.localService === true;
        const said = { text: speech.text, isLocal, from: seconds(), to: 0, asked: 0 };
        window.said.push(said);
        speaking++;
        setTimeout(() => {
          speaking--;
          said.to = seconds();
          said.asked = Number(asked());
          speech.onend?.();
        }, 700);
      },
    },
  });
  const pause = (length: number) => new Promise((over) => setTimeout(over, 1000 * length));
  window.playAlong = async (until) => {
    while (done() < until) {
      // A player listens to the voice, and gives it a moment to begin.
      await pause(0.3);
      while (speaking > 0) await pause(0.05);
      await pause(0.3);
      if (speaking > 0) continue;
      window.struckAt.push(seconds());
      await window.struckPan.strike([Number(asked())], 0.7);
    }
  };
}

const history = (page: Page) =>
  page.evaluate(() => ({ said: window.said, struckAt: window.struckAt }));

it('a voice of the phone’s own names each next note, after it is kept and never while a strike is measured', async () => {
  const app = await openWithRecords(
    '#/pan/pan-1/begin',
    { records: panWith({}, []), settings: { ...defaultSettings, announcement: 'voice' } },
    {
      beforeApp: [installStruckPan, installVoice],
      flags: ['--autoplay-policy=no-user-gesture-required'],
    },
  );
  try {
    const { page } = app;
    await takePan(page, createPracticePan(11));
    await page.getByRole('button', { name: 'Start and listen' }).click();
    await page.locator('[data-microphone="listening"]').waitFor();
    await page.evaluate(() => window.playAlong(4));
    // The fourth note is done when the fifth is named: that takes as long as it is said.
    await page.waitForFunction(
      () => window.said.length >= 4 && window.said.every(({ to }) => to > 0),
    );
    const { said, struckAt } = await history(page);

    // The first note is on the screen when listening begins; after each of the four the next one is named.
    expect(said.map(({ text }) => text)).toEqual(said.map(({ asked }) => spoken(asked)));
    expect(said).toHaveLength(4);
    expect(new Set(said.map(({ asked }) => asked)).size).toBe(4);
    expect(said.every(({ isLocal }) => isLocal)).toBe(true);
    for (const { text, from, to } of said) {
      const before = struckAt.filter((at) => at < from).at(-1) ?? Number.NaN;
      expect(from - before, `${text} was said too early`).toBeGreaterThan(measuring);
      expect(struckAt.filter((at) => at > from && at < to)).toEqual([]);
    }
    // Nothing that was struck after the voice was lost to it: three strikes settle a note, a fourth tells a walk.
    expect(struckAt.length).toBeLessThanOrEqual(4 * 5);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});

const names = [
  'C',
  'C sharp',
  'D',
  'E flat',
  'E',
  'F',
  'F sharp',
  'G',
  'A flat',
  'A',
  'B flat',
  'B',
];
/** How a note is said, from its MIDI number: "F sharp 5". */
const spoken = (note: number): string => `${names[note % 12]} ${Math.floor(note / 12) - 1}`;
