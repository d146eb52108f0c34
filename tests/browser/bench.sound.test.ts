// The bench through the microphone: strikes, blows between them, what they did, suggestions, and what is checked afterwards.
import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { ringPairs, ringPartnersOf } from '../../src/domain/pans/ring-partners';
import type { ReadingRecord } from '../../src/domain/records/rack-records';
import { cents, midiNote } from '../../src/domain/tuning/units';
import { createPracticePan, type PracticePan } from '../../src/practice-pan/practice-pan';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { hammerBlow } from '../sounds/blows';
import { axeFaults } from './axe-faults';
import { keptText } from './kept-records';
import { layOut } from './lay-out';
import type { OpenedApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { installStruckPan, struckRate, takePan } from './struck-pan';

const d5 = midiNote(74);
/** The number under which the player in the page knows the sound of a blow. */
const blow = 0;
/** Where screenshots go, for those who want to see them. */
const pictures = process.env['BENCH_PICTURES'];

const planted = (fundamental: number, octave: number, third: number): PracticePan =>
  createPracticePan(17, {
    planted: new Map([
      [
        d5,
        {
          fundamentalCents: cents(fundamental),
          octaveCents: cents(octave),
          third: { kind: 'double-octave', cents: cents(third) },
        },
      ],
    ]),
  });

async function openBench(records = panWith({}, [])): Promise<OpenedApp> {
  return openWithRecords(
    '#/pan/pan-1/note/74',
    { records },
    {
      beforeApp: installStruckPan,
      viewport: { width: 360, height: 740 },
      bypassPolicy: true,
      theme: 'light',
    },
  );
}

async function takeBlows(page: Page): Promise<void> {
  const sound = hammerBlow(seededRandom(5), struckRate, 0.4);
  const numbers = Int16Array.from(sound, (value) => Math.round(16_000 * value));
  const samples = Buffer.from(numbers.buffer).toString('base64');
  await page.evaluate(
    ({ note, samples, rate }) => window.struckPan.load([{ note, samples }], rate),
    {
      note: blow,
      samples,
      rate: struckRate,
    },
  );
}

const strike = (page: Page, notes: readonly number[], gap: number): Promise<void> =>
  page.evaluate(({ notes, gap }) => window.struckPan.strike(notes, gap), { notes, gap });

/** Strikes the note until its reading has settled: a busy machine may lose the sound of a strike. */
async function strikeUntilSettled(page: Page, note: number): Promise<void> {
  for (let tries = 0; tries < 8; tries++) {
    await strike(page, [note], 1.3);
    const state = await page.locator('#readout').getAttribute('data-state');
    const isNew = (await page.locator('.bench').getAttribute('data-awaits')) === 'false';
    if (state === 'settled' && isNew) return;
  }
  throw new Error('the strikes did not settle');
}

const data = (page: Page): Promise<Readonly<Record<string, string | undefined>>> =>
  page.locator('.bench').evaluate((main) => ({ ...(main as HTMLElement).dataset }));

/** The notes of all readings that are on disk. */
const keptNotes = async (page: Page): Promise<readonly number[]> =>
  (await keptText(page))
    .split('\n')
    .map((text) => JSON.parse(text) as Partial<ReadingRecord>)
    .flatMap(({ kind, note }) => (kind === 'reading' && note !== undefined ? [note] : []));

/** What axe finds, what is too small for a finger, and what leaves the screen. */
async function faultsOf(page: Page): Promise<readonly string[]> {
  const broken = await axeFaults(page);
  const misplaced = await page.evaluate(() => {
    const targets = [
      ...document.querySelectorAll(
        'a, button, select, summary, input:not([type="radio"], [type="checkbox"]), .choice',
      ),
    ].filter((element) => element.checkVisibility());
    const small = targets.filter((element) => {
      const { width, height } = element.getBoundingClientRect();
      return height < 44 || width < 44;
    });
    const main = [...document.querySelectorAll('.actions button, .actions a')].filter(
      (element) => element.getBoundingClientRect().height < 60,
    );
    const wide = document.documentElement.scrollWidth - window.innerWidth;
    return [
      ...small.map((element) => `small: ${element.textContent}`),
      ...main.map((element) => `main button: ${element.textContent}`),
      ...(wide > 0 ? [`${wide} px too wide`] : []),
    ];
  });
  return [...broken, ...misplaced];
}

let shot = 0;
async function picture(page: Page, name: string): Promise<void> {
  if (!pictures) return;
  mkdirSync(pictures, { recursive: true });
  await page.screenshot({ path: `${pictures}/${shot++}-${name}.png`, fullPage: true });
}

describe('a note on the bench', () => {
  it('is struck, hammered, compared, advised on and checked, and is still there after a reload', async () => {
    const app = await openBench();
    const { page } = app;
    try {
      const pan = planted(-12, -8, 3);
      await page.getByRole('link', { name: 'Work on this note' }).click();
      await page.locator('.bench[data-note="74"]').waitFor();
      // The ring partners to cover are named before the first strike.
      const cover = await page.locator('.cover').textContent();
      const partners = ringPartnersOf(d5, ringPairs(pan.layout)).map(({ other }) => other.note);
      expect(partners).toContain(86);
      expect(cover).toContain('D6');
      await picture(page, 'opened');

      await takePan(page, pan);
      await takeBlows(page);
      await page.getByRole('button', { name: 'Listen' }).click();
      await page.locator('[data-microphone="listening"]').waitFor();
      await page.waitForTimeout(600);
      await strikeUntilSettled(page, d5);
      const shown = await page.locator('#readout').getAttribute('data-fundamental-cents');
      expect(Math.abs(Number(shown) + 12)).toBeLessThan(1);
      expect(await page.locator('.advice').count()).toBe(0);
      await picture(page, 'first-reading');

      // Three blows are counted and are no strikes.
      const strikes = await page.locator('#readout').getAttribute('data-strikes');
      await strike(page, [blow, blow, blow], 0.7);
      await page.locator('.bench[data-blows="3"]').waitFor();
      expect(await page.locator('#readout').getAttribute('data-strikes')).toBe(strikes);
      expect(await page.locator('#readout').getAttribute('data-state')).toBe('settled');
      // One line in sight leads to the cautions, on the same page.
      await page.getByRole('button', { name: /All cautions/ }).click();
      const cautions = page.locator('.bench-cautions');
      expect(await cautions.textContent()).toMatch(/hearing protection/i);
      expect(await cautions.textContent()).toMatch(/eye protection/i);
      expect(await cautions.textContent()).toMatch(/cracked/i);
      expect(await cautions.textContent()).toMatch(/professional/i);
      expect(await cautions.getByText('Wear eye protection').isVisible()).toBe(true);
      expect(await page.locator('.bench').getAttribute('data-blows')).toBe('3');
      await page.getByRole('button', { name: 'ends of the long axis', exact: true }).click();
      await page.locator('.blow-log[data-logged="long-ends"]').waitFor();
      await picture(page, 'logged');
      expect(await faultsOf(page)).toEqual([]);

      const before = pan.truth(d5);
      pan.hammer(d5, { place: 'long-ends', side: 'above' }, 'light', 3);
      const after = pan.truth(d5);
      if (!before || !after) throw new Error('the note is missing');
      await takePan(page, pan);
      await strikeUntilSettled(page, d5);
      // What the blows did appears by itself, as it was planted.
      const moved = after.fundamentalCents - before.fundamentalCents;
      const text = await page.locator('[data-change="0"]').textContent();
      const said = text?.includes('no change')
        ? 0
        : (text?.includes('lowered') ? -1 : 1) * Number(text?.match(/by (\d+)/)?.[1]);
      expect(Math.abs(said - moved), text ?? '').toBeLessThan(1.5);
      await picture(page, 'after-blows');

      // No suggestion before the confirmation, one after it.
      expect(await page.locator('.advice').count()).toBe(0);
      await page.getByText('Suggestions', { exact: true }).click();
      await page.getByRole('button', { name: 'I have been shown how by a tuner' }).click();
      const advice = page.locator('.advice');
      await advice.waitFor();
      expect(await advice.getAttribute('data-advice')).toBe('blows');
      expect(await advice.textContent()).toMatch(/Risk/);
      expect(await advice.textContent()).toMatch(/It may disturb/);
      expect(await advice.textContent()).toMatch(/D6/);
      expect(await advice.textContent()).toMatch(/professional can undo less/);
      await picture(page, 'advice');
      expect(await faultsOf(page)).toEqual([]);

      // What the work may have moved is walked through.
      const checks = await page.locator('.check-row').count();
      expect(checks).toBeGreaterThan(2);
      await page.getByRole('button', { name: /^Next: check/ }).click();
      const checked = Number((await data(page))['checking']);
      expect(checked).toBeGreaterThan(0);
      for (let tries = 0; tries < 8; tries++) {
        await strike(page, [checked], 1.3);
        if (Number((await data(page))['checking']) !== checked) break;
      }
      await page.locator(`[data-check="${checked}"][data-checked="true"]`).waitFor();
      await picture(page, 'checking');
      expect(await faultsOf(page)).toEqual([]);

      // What was checked is shown at once; after this it is on disk.
      await expect.poll(() => keptNotes(page)).toContain(checked);
      await page.reload();
      await page.locator('.bench[data-sets="1"]').waitFor();
      expect(await page.locator('.trail .lane').count()).toBe(3);
      await page.locator(`[data-check="${checked}"][data-checked="true"]`).waitFor();
      for (const [width, size] of [
        [320, '100%'],
        [360, '200%'],
      ] as const) {
        await layOut(page, width, 740, size);
        await page.getByRole('button', { name: 'Log blows' }).click();
        await picture(page, `${width}-${size}`);
        expect(await faultsOf(page), `${width} px at ${size}`).toEqual([]);
        await page.getByRole('button', { name: 'Close' }).click();
      }
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('marked as cracked is for a professional, and no place is ever suggested', async () => {
    const app = await openBench();
    const { page } = app;
    try {
      await page.getByRole('link', { name: 'Work on this note' }).click();
      await page.locator('.bench[data-note="74"]').waitFor();
      await takePan(page, planted(-12, -8, 3));
      await page.getByRole('button', { name: 'Listen' }).click();
      await page.locator('[data-microphone="listening"]').waitFor();
      await page.waitForTimeout(600);
      await strikeUntilSettled(page, d5);
      await page.getByText('Suggestions', { exact: true }).click();
      await page.getByRole('button', { name: 'I have been shown how by a tuner' }).click();
      await page.locator('.advice[data-advice="blows"]').waitFor();
      await page.getByText('Mark this note').click();
      await page.getByRole('button', { name: 'Cracked' }).click();
      await page.locator('.advice[data-advice="professional"][data-why="cracked"]').waitFor();
      expect(await page.locator('.advice[data-advice="blows"]').count()).toBe(0);
      await expect.poll(() => keptText(page)).toContain('"mark":"cracked"');
      await page.reload();
      await page.locator('.bench[data-note="74"]').waitFor();
      await page.getByText('not played and not hammered').first().waitFor();
      await page.getByText('Mark this note').click();
      // Which mark it is can be seen, also where no round was opened before.
      const edgeOf = (name: string) =>
        page
          .getByRole('button', { name })
          .evaluate((button) => getComputedStyle(button).borderTopStyle);
      expect(await edgeOf('Cracked')).toBe('double');
      expect(await edgeOf('Buzzing')).toBe('solid');
      expect(await page.locator('.advice[data-advice="blows"]').count()).toBe(0);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('without a pan is reached from the listening screen and keeps nothing', async () => {
    const app = await openBench([]);
    const { page } = app;
    try {
      await page.goto(`${app.address}#/listen`);
      await page.getByLabel('Note to strike').selectOption('74');
      await page.getByRole('link', { name: 'Work on D5' }).click();
      await page.locator('.bench[data-note="74"]').waitFor();
      await page.getByText('nothing is kept').waitFor();
      expect(await faultsOf(page)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
