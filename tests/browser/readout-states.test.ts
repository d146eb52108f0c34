// What the readout shows and asks for in states that only the ear can bring about.
import { describe, expect, it } from 'vitest';
import type { RefusedStrike } from '../../src/domain/measurement/strike';
import { midiNote, seconds } from '../../src/domain/tuning/units';
import { type StrikeSketch, strikeSample } from '../domain/reading/strike-sample';
import { axeFaults } from './axe-faults';
import { layOut } from './lay-out';
import { openToldApp, type ToldApp } from './stand-in-ear';

const strikes = (...sketches: StrikeSketch[]) =>
  sketches.map((sketch, k) => strikeSample({ event: k + 1, ...sketch }));
const three = (sketch: StrikeSketch) => strikes(sketch, sketch, sketch);
const whichNote: RefusedStrike = {
  kind: 'refused',
  event: 9,
  at: seconds(9),
  reason: 'which-note',
  note: null,
  candidates: [midiNote(74), midiNote(86)],
};

/** Rows of the table of partials, each as "name | word | value". */
const rows = (app: ToldApp) =>
  app.page.evaluate(() =>
    [...document.querySelectorAll('.partials tr')].map((row) =>
      [...row.children].map((cell) => cell.textContent).join(' | '),
    ),
  );

/** What lies outside the screen, sideways. */
const cut = (app: ToldApp) =>
  app.page.evaluate(() => ({
    page: document.documentElement.scrollWidth - window.innerWidth,
    lines: [...document.querySelectorAll('.fit-line, p, td, th, li, summary, button, .button')]
      .filter((element) => {
        const { left, right, width } = element.getBoundingClientRect();
        return width > 1 && (left < -0.5 || right > window.innerWidth + 0.5);
      })
      .map((element) => element.textContent),
  }));

/** Names of partials of one word that stand on two lines. */
const brokenNames = (app: ToldApp) =>
  app.page.evaluate(() =>
    [...document.querySelectorAll('.partials th')]
      .flatMap((cell) => cell.firstChild ?? [])
      .filter((text) => {
        const range = document.createRange();
        range.selectNodeContents(text);
        return !text.textContent?.includes(' ') && range.getClientRects().length > 1;
      })
      .map((text) => text.textContent),
  );

async function withApp(use: (app: ToldApp) => Promise<void>): Promise<void> {
  const app = await openToldApp();
  try {
    await use(app);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
}

describe('two lines at the octave', () => {
  it('are both shown and not judged; the damping test is asked for, and settles which is the own', () =>
    withApp(async (app) => {
      await app.say(...three({ octave: 12, rival: 0 }));
      await app.page
        .locator('#readout[data-verdict="octave-open"][data-state="settled"]')
        .waitFor();
      await app.page.getByText('Two lines at the octave, 12 cents apart.').last().waitFor();
      await app.page.getByText('Lay a finger on D6 and strike again.').last().waitFor();
      const data = await app.page.locator('#readout').evaluate((element) => ({
        ...(element as HTMLElement).dataset,
      }));
      expect(data).toMatchObject({
        octaveCents: '12.00',
        octaveRivalCents: '0.00',
        rivalNote: 'D6',
        inferred: 'false',
      });
      expect(await rows(app)).toEqual([
        'fundamental | good | 0',
        'octave | unsure | +12',
        'octave | unsure | 0',
        'twelfth | good | 0',
      ]);
      await app.say(strikeSample({ event: 4, octave: 0 }));
      await app.page.locator('#readout[data-verdict="aligned"][data-rival-note=""]').waitFor();
      expect((await rows(app))[1]).toBe('octave | good | 0');
      expect(await app.page.getByText('Two lines').count()).toBe(0);
    }));
});

describe('a strike that may have been one of two notes', () => {
  it('is asked for by name, and one tap tells the ear', () =>
    withApp(async (app) => {
      await app.say(whichNote);
      const d6 = app.page.getByRole('button', { name: 'D6', exact: true });
      await app.page.getByRole('button', { name: 'D5', exact: true }).waitFor();
      const box = await d6.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(60);
      expect(box?.width).toBeGreaterThanOrEqual(60);
      expect((box?.y ?? 640) + (box?.height ?? 0)).toBeLessThanOrEqual(560);
      await d6.press('Enter');
      await app.page.getByText('strike D6').waitFor();
      expect(await app.expectedNote()).toBe(86);
    }));
});

describe('a note that walks', () => {
  it('says so in place of a verdict, with what to do, and is read out', () =>
    withApp(async (app) => {
      const values = [0, -0.8, -1.7, -2.5];
      await app.say(...strikes(...values.map((fundamental) => ({ fundamental }))));
      await app.page.locator('.state', { hasText: 'each strike lower.' }).waitFor();
      await app.page.locator('.todo', { hasText: 'Stop and let it rest.' }).waitFor();
      expect(await app.page.locator('#readout').getAttribute('data-verdict')).toBe('');
      expect(await app.page.locator('#readout').getAttribute('data-state')).toBe('heard');
      expect((await rows(app))[0]).toBe('fundamental | walking | −3');
      expect(await app.page.locator('[aria-live]').textContent()).toContain('Walking');
      expect(await app.page.locator('.oval.filled').count()).toBe(0);
    }));
});

describe('a reading', () => {
  it('marks an inferred fundamental with a word and says why', () =>
    withApp(async (app) => {
      await app.say(strikeSample({ note: 34, isInferred: true }));
      await app.page.locator('#readout[data-inferred="true"]').waitFor();
      expect((await rows(app))[0]).toBe('fundamental inferred | unsure | 0');
      await app.page.getByText('too low for the phone').waitFor();
    }));

  it('asks for a softer or louder strike beside the verdict, and still counts it', () =>
    withApp(async (app) => {
      await app.say(strikeSample({ loudness: 'loud' }));
      await app.page.getByText('strike 1 of 3 · a little softer').waitFor();
      await app.say(strikeSample({ event: 2, loudness: 'soft' }));
      await app.page.getByText('strike 2 of 3 · a little louder').waitFor();
      expect(await app.page.locator('#readout').getAttribute('data-verdict')).toBe('aligned');
    }));

  it('shows its spread, and on a tap its standard errors and what was left out', () =>
    withApp(async (app) => {
      await app.say(...strikes({}, { fundamental: 0.4 }, { fundamental: 0.2 }, { fundamental: 9 }));
      const summary = app.page.getByText('Spread 0.4 cents · 1 left out');
      await summary.waitFor();
      expect((await summary.boundingBox())?.height).toBeGreaterThanOrEqual(44);
      const left = app.page.getByText('One strike left out: its fundamental was 9 cents off.');
      expect(await left.isVisible()).toBe(false);
      await summary.press('Enter');
      await left.waitFor();
      expect(await app.page.getByText(/^fundamental ± 0\.[12] cents$/).isVisible()).toBe(true);
      expect(await app.page.locator('#readout').textContent()).not.toContain('±');
    }));
});

describe('the states of the readout', () => {
  const states = {
    'two octaves': three({ octave: 12, rival: 0, loudness: 'loud' }),
    walking: strikes({}, { fundamental: -1 }, { fundamental: -2 }, { fundamental: -3 }),
    inferred: three({ note: 34, isInferred: true }),
    'which note': [whichNote],
  };
  for (const theme of ['light', 'dark'] as const) {
    it(`pass axe in the ${theme} theme and are not cut at 360, 320 and 200 %`, async () => {
      const app = await openToldApp({ theme, bypassPolicy: true });
      try {
        for (const [name, heard] of Object.entries(states)) {
          // Another note in between begins anew.
          await app.say(strikeSample({ event: 100, note: 60 }), ...heard);
          await app.page.locator('.how-sure').evaluate((element) => {
            (element as HTMLDetailsElement).open = true;
          });
          for (const [width, text] of [
            [360, '200%'],
            [320, '100%'],
            [360, '100%'],
          ] as const) {
            await layOut(app.page, width, 640, text);
            expect(await brokenNames(app), `${name}, ${width} px at ${text}`).toEqual([]);
            expect(await cut(app), `${name}, ${width} px at ${text}`).toEqual({
              page: 0,
              lines: [],
            });
          }
          expect(await axeFaults(app.page), name).toEqual([]);
        }
      } finally {
        await app.close();
      }
    });
  }
});
