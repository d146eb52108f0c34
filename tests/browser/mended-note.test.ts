// What the bench did counts everywhere: a note that was put right there is right on every screen, at once and after a
// reload; and a top note whose partials the blows spoiled is not called aligned.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Strike } from '../../src/domain/measurement/strike';
import { defaultSettings } from '../../src/domain/settings/settings';
import { hertz, seconds } from '../../src/domain/tuning/units';
import { strikeSample } from '../domain/reading/strike-sample';
import { axeFaults } from './axe-faults';
import { keptText } from './kept-records';
import type { OpenedApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { asPan, panWith } from './seeded-pans';
import { sayHeard, standInEar, untilListening } from './stand-in-ear';

/** D4, and E6, which is judged by its fundamental only. */
const [flat, top] = [62, 88];
const records = [
  ...panWith({ name: 'Heron' }, [
    {
      day: 300,
      off: { [flat]: { fundamental: -31 }, [top]: { fundamental: 3, octave: -1, third: -2 } },
    },
  ]),
  ...asPan('pan-2', panWith({ name: 'Egret' }, [{ day: 300, off: { 66: { fundamental: -16 } } }])),
];
const settings = { ...defaultSettings, isTrained: true };
const open = () =>
  openWithRecords('#/', { records, settings }, { beforeApp: standInEar, bypassPolicy: true });

let lastEvent = 0;
interface Values {
  readonly fundamental: number;
  readonly octave: number;
  readonly third: number;
}

/** A strike as the ear would tell it: what is kept of it are the frequencies. */
function strikeOf(note: number, { fundamental, octave, third }: Values): Strike {
  const strike = strikeSample({ note, fundamental, octave, third, event: ++lastEvent });
  const own = 440 * 2 ** ((note - 69) / 12 + fundamental / 1200);
  const line = (times: number, off: number) => hertz(times * own * 2 ** (off / 1200));
  if (!strike.octave || !strike.third) throw new Error('the strike has all partials');
  return {
    ...strike,
    fundamental: { ...strike.fundamental, hz: line(1, 0) },
    octave: { ...strike.octave, hz: line(2, octave) },
    third: { ...strike.third, hz: line(3, third) },
  };
}

const show = async ({ page }: OpenedApp, hash: string, there: string) => {
  await page.evaluate((to) => {
    window.location.hash = to;
  }, hash);
  await page.locator(there).first().waitFor();
};

/** Strikes the note on the bench until its reading is kept. */
async function strike(page: Page, note: number, values: Values): Promise<void> {
  const before = (await keptText(page)).length;
  await sayHeard(
    page,
    [1, 2, 3].map(() => strikeOf(note, values)),
  );
  await page.locator('#readout[data-state="settled"]').waitFor();
  await expect.poll(async () => (await keptText(page)).length).toBeGreaterThan(before);
}

/** Strikes, three blows, and strikes again. */
async function work(app: OpenedApp, note: number, before: Values, after: Values): Promise<void> {
  const { page } = app;
  await show(app, `#/pan/pan-1/bench/${note}`, `main.bench[data-note="${note}"]`);
  await page.getByRole('button', { name: 'Listen', exact: true }).click();
  await untilListening(page);
  await strike(page, note, before);
  await sayHeard(
    page,
    [1, 2, 3].map(() => {
      const event = ++lastEvent;
      return { kind: 'knock', event, at: seconds(event) } as const;
    }),
  );
  await page.locator('main.bench[data-awaits="true"][data-blows="3"]').waitFor();
  await strike(page, note, after);
}

const orderOfRack = (page: Page) =>
  page.locator('.pan-row').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-pan')));

/** What each screen says of the note: map, its page, tonight, the sheet, the order of work and the order of pans. */
async function said(app: OpenedApp, inNeed: readonly string[]) {
  const { page } = app;
  await show(app, '#/', '.pan-row');
  // The card of a pan that was written to is made anew after it is shown.
  await expect.poll(() => orderOfRack(page)).toEqual(inNeed);
  const row = await page.locator('.pan-row[data-pan="pan-1"]').textContent();
  await show(app, '#/visit', '.visit-page [data-pan]');
  const visit = await page
    .locator('.visit-page [data-pan]')
    .evaluateAll((rows) => rows.map((row) => row.getAttribute('data-pan')));
  await show(app, '#/pan/pan-1', '.standing-map');
  const map = await page
    .locator(`.standing-map a[href*="note/${flat}"]`)
    .getAttribute('aria-label');
  const worst = await page.locator(`.note-row[data-note="${flat}"]`).count();
  const work = await page.locator(`.work-plan [data-work="${flat}"]`).count();
  await show(app, `#/pan/pan-1/note/${flat}`, `.note-page[data-note="${flat}"] .note-standing`);
  const standing = await page.locator('.note-standing').textContent();
  const taken = await page.locator('.note-taken').textContent();
  await show(app, '#/pan/pan-1/tonight', '.sentence');
  const tonight = await page.locator('.sentence').textContent();
  await show(app, '#/pan/pan-1/sheet', `.sheet-table tr[data-note="${flat}"]`);
  const sheet = await page.locator(`.sheet-table tr[data-note="${flat}"]`).textContent();
  return { row, visit, map, worst, work, standing, taken, tonight, sheet };
}

describe('a note that was put right on the bench', () => {
  it('is right on map, page, tonight, sheet, order of work and order of pans, at once and after a reload', async () => {
    const app = await open();
    try {
      const { page } = app;
      const before = await said(app, ['pan-1', 'pan-2']);
      expect(before).toMatchObject({ visit: ['pan-1', 'pan-2'], worst: 1, work: 1 });
      expect(before.row).not.toContain('worked on');
      expect(before.map).toContain('flat 31, avoid');
      expect(before.tonight).toBe('Play it without D4.');
      expect(before.taken).toContain('measured in the round');
      expect(before.sheet).toContain('avoid');

      await work(
        app,
        flat,
        { fundamental: -31, octave: 1, third: 2 },
        { fundamental: -2, octave: 1, third: 2 },
      );
      for (const isReloaded of [false, true]) {
        if (isReloaded) await page.reload();
        const now = await said(app, ['pan-2', 'pan-1']);
        expect(now).toMatchObject({ worst: 0, work: 0 });
        expect(now.row).toContain('worked on since: D4');
        expect(now.visit[0]).toBe('pan-2');
        expect(now.map).toMatch(/D4: good, worked on since the round/);
        expect(now.standing).toContain('good');
        expect(now.taken).toMatch(/measured on the bench, .* worked on since the round/);
        expect(now.tonight).toBe('Play it.');
        expect(now.sheet).toContain('measured on the bench');
        expect(now.sheet).not.toContain('avoid');
      }
      // The round stays what it was.
      await show(app, '#/pan/pan-1/result/round-300', '.result');
      await page.locator(`.result .note-row[data-note="${flat}"]`).first().waitFor();
      await show(app, '#/pan/pan-1', '.standing-map');
      await page.getByText('Worked on since the round: D4.').waitFor();
      expect(await axeFaults(page)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('a top note', () => {
  it('whose octave the blows spoiled is called in tune, not aligned, and what they spoiled is said', async () => {
    const app = await open();
    try {
      const { page } = app;
      await work(
        app,
        top,
        { fundamental: 3, octave: -1, third: -2 },
        { fundamental: 1, octave: -7, third: -14 },
      );
      const verdict = await page.locator('#readout').getAttribute('data-verdict');
      expect(verdict).toBe('in-tune');
      expect((await page.locator('#readout').textContent())?.toLowerCase()).not.toContain(
        'aligned',
      );
      const hint = page.locator('.top-note');
      expect(await hint.textContent()).toContain('octave −1 → −7');
      expect(await hint.textContent()).toContain('Of a top note only the fundamental is judged.');
      expect(await page.locator('.made-worse').count()).toBe(2);
      expect(await page.locator('.effect').textContent()).toContain('lowered the');
      expect(await axeFaults(page)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
