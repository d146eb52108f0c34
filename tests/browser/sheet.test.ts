// The sheet for the tuner on the screen, on paper and as a file; the tuner's answers; which pans first.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { RackRecord } from '../../src/domain/records/rack-records';
import { displayName } from '../../src/domain/tuning/note-names';
import { midiNote } from '../../src/domain/tuning/units';
import { sheetSample } from '../domain/sheet/sheet-sample';
import { axeFaults } from './axe-faults';
import { keptSettings, keptText } from './kept-records';
import { layOut } from './lay-out';
import type { OpenedApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { asPan } from './seeded-pans';
import { damagedLead, knockedLead, otherPans, ruinedLead } from './sheet-rack';

const rack = [...knockedLead, ...otherPans];
const paper = { A4: [210, 297], Letter: [215.9, 279.4] } as const;

const open = (records: readonly RackRecord[] = rack) =>
  openWithRecords('#/', { records }, { bypassPolicy: true });

const show = async ({ page }: OpenedApp, hash: string, there: string) => {
  await page.evaluate((to) => {
    window.location.hash = to;
  }, hash);
  await page.locator(there).first().waitFor();
};
const showSheet = (app: OpenedApp, pan = 'pan-1') =>
  show(app, `#/pan/${pan}/sheet`, `.sheet-page[data-pan="${pan}"] .sheet-table`);

/** How many pages a PDF of Chromium has: its page objects are written in the open. */
const pagesOf = (pdf: Buffer): number =>
  pdf.toString('latin1').match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;

/** The texts of all cells, row by row. */
const tableOf = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('.sheet-table tbody tr')].map((row) =>
      [...row.children].map((cell) => cell.textContent?.trim() ?? ''),
    ),
  );

describe('the sheet for the tuner', () => {
  it('has one row a note with what is stored: hertz, cents, octave, third, strikes and marks', async () => {
    const app = await open();
    try {
      await showSheet(app);
      const rows = await tableOf(app.page);
      const stored = sheetSample(knockedLead).notes;
      expect(rows.map(([note]) => note)).toEqual(stored.map(({ note }) => displayName(note)));
      for (const [k, { note, measured }] of stored.entries()) {
        const [, , hz, inCents, , octave, , ring, strikes, spread] = (rows[k] ?? []).map((text) =>
          text.replace('−', '-'),
        );
        expect(Number(hz), displayName(note)).toBeCloseTo(measured?.hz ?? 0, 1);
        expect(Number(inCents), displayName(note)).toBeCloseTo(measured?.cents ?? 99, 0);
        expect(Number.parseFloat(octave ?? ''), displayName(note)).toBeCloseTo(
          measured?.octave ?? 99,
          0,
        );
        expect(Number(ring), displayName(note)).toBeCloseTo(measured?.ring ?? 0, 0);
        expect(Number(strikes), displayName(note)).toBe(measured?.strikes);
        expect(Number(spread), displayName(note)).toBeCloseTo(measured?.spread ?? 99, 0);
      }
      // Planted by hand: D4 at 440·2^(−7/12)·2^(−20/1200) = 290.29 Hz, its twelfth 31 cents sharp.
      const d4 = rows[stored.findIndex(({ note }) => note === midiNote(62))];
      expect(d4?.slice(0, 4)).toEqual(['D4', 'out', '290.29', '−20.0']);
      expect(d4?.[6]).toBe('12th +31.0');
      const text = (await app.page.locator('.sheet').textContent()) ?? '';
      for (const part of [
        'Heron',
        'HL 14',
        'Fine tuning; look at C4 and at the rim',
        'before 20 August',
        'The tuner from the coast',
        'the rim is bent',
        'Fell off the stand.',
        '2 sets, 7 blows',
        'magnet on it',
        'Marked dead: C4.',
        'A = 441.5 Hz',
        '26 °C',
      ]) {
        expect(text.replaceAll('\u00a0', ' '), part).toContain(part);
      }
      expect(text).not.toContain('99 blows');
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('is one page of A4 or US letter for a lead, two at most for other pans, black on white and nothing cut', async () => {
    const leads = { damaged: damagedLead, ruined: ruinedLead };
    const more = Object.entries(leads).flatMap(([id, records]) => asPan(id, records));
    const app = await open([...rack, ...more]);
    try {
      const { page } = app;
      const shown = ['pan-1', ...Object.keys(leads), ...otherPans.map(({ pan }) => String(pan))];
      for (const pan of new Set(shown)) {
        await showSheet(app, pan);
        await page.emulateMedia({ media: 'print' });
        for (const format of ['A4', 'Letter'] as const) {
          const pages = pagesOf(await page.pdf({ format }));
          expect(pages, `${pan}, ${format}`).toBeGreaterThan(0);
          expect(pages, `${pan}, ${format}`).toBeLessThanOrEqual(
            pan === 'pan-1' || pan in leads ? 1 : 2,
          );
          // As wide as the paper without its margins of 9 mm, 96 CSS px to the inch.
          const width = Math.floor(((paper[format][0] - 18) / 25.4) * 96);
          await layOut(page, width, 1000);
          const faults = await page.evaluate(() => {
            const texts = [...document.querySelectorAll('.sheet *')].filter((each) =>
              [...each.childNodes].some(
                ({ nodeType, textContent }) => nodeType === 3 && textContent?.trim(),
              ),
            );
            const colours = texts.flatMap((each) => {
              const { color, fill } = getComputedStyle(each);
              return each instanceof SVGElement ? fill : color;
            });
            return {
              cut: texts
                .filter((each) => {
                  const { left, right, width: wide } = each.getBoundingClientRect();
                  return wide === 0 || left < -0.5 || right > window.innerWidth + 0.5;
                })
                .map(({ textContent }) => textContent),
              hidden: texts
                .filter(
                  (each) =>
                    !(each instanceof SVGElement) &&
                    each.scrollWidth > each.clientWidth + 1 &&
                    each.clientWidth > 0,
                )
                .map(({ textContent }) => textContent),
              colours: [...new Set(colours)],
              else: [...document.querySelectorAll('main > :not(.paper)')]
                .filter((each) => each.getBoundingClientRect().height > 0)
                .map(({ className }) => className),
            };
          });
          expect(faults, `${pan}, ${format}`).toEqual({
            cut: [],
            hidden: [],
            // All text is black: readable in grey.
            colours: ['rgb(0, 0, 0)'],
            else: [],
          });
        }
        await page.emulateMedia({ media: null });
      }
    } finally {
      await app.close();
    }
  });

  it('names the signs of damage that were heard after a knock: beside their notes, with its day, and in the saved page', async () => {
    const app = await open(damagedLead);
    const folder = mkdtempSync(join(tmpdir(), 'ringwright-sheet-'));
    try {
      const { page } = app;
      await showSheet(app);
      const rows = await tableOf(page);
      const remarks = Object.fromEntries(rows.map((row) => [row[0], row.at(-1)]));
      expect(remarks).toMatchObject({
        C4: 'dead; choked',
        D4: 'no octave',
        E4: 'buzzing',
        'F♯4': 'no third',
        B4: 'walking −6.0 a strike',
        E5: 'choked',
      });
      expect(remarks['C♯5']).toContain('octave doubled');
      expect(remarks['D5']).toContain('choked, buzzing');
      const told = page.locator('.sheet-story li').filter({ hasText: 'choked C4, A4, D5, E5' });
      // Day 210 after 10 January 2026.
      expect((await told.textContent())?.replaceAll('\u00a0', ' ')).toMatch(/^8 Aug 2026: Knock/);
      for (const [button, kept] of [
        ['Save as a page', 'dead; choked'],
        ['Readings as a table (CSV)', ',choked; buzzing,'],
      ] as const) {
        const coming = page.waitForEvent('download');
        await page.getByRole('button', { name: button }).click();
        const file = join(folder, button);
        await (await coming).saveAs(file);
        expect(readFileSync(file, 'utf8'), button).toContain(kept);
      }
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('keeps what is wanted with the pan, and goes out as a page that shows the same without network and script', async () => {
    const app = await open();
    const folder = mkdtempSync(join(tmpdir(), 'ringwright-sheet-'));
    try {
      const { page, context } = app;
      await showSheet(app);
      const awkward = `<img src=x onerror="document.title='hurt'"> & 'more'`;
      await page.getByLabel('What is wanted').fill(awkward);
      await page.getByLabel('Contact').fill('The band, 555 0100');
      await page.getByLabel('Contact').blur();
      await page.locator('.sheet').getByText(awkward).waitFor();
      // It is shown at once; this is about what is on disk.
      await expect.poll(() => keptText(page)).toContain('onerror');
      const kept = async () => JSON.stringify((await keptSettings(page)) ?? null);
      await expect.poll(kept).toContain('555 0100');
      await page.reload();
      await page.locator('.sheet').getByText(awkward).waitFor();
      const contact = page.getByLabel('Contact');
      await expect.poll(() => contact.inputValue()).toBe('The band, 555 0100');
      const rows = await tableOf(page);
      const coming = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Save as a page' }).click();
      const file = join(folder, 'sheet.html');
      await (await coming).saveAs(file);
      const bare = await context.browser()?.newContext({ javaScriptEnabled: false, offline: true });
      const reader = bare ? await bare.newPage() : await context.newPage();
      const asked: string[] = [];
      reader.on('request', (request) => asked.push(request.url()));
      if (!bare) await context.setOffline(true);
      await reader.goto(`file://${file}`);
      // With scripts off the page cannot be asked by script: its elements are read from outside.
      const found = await reader.locator('.sheet-table tbody tr').all();
      expect(found).toHaveLength(rows.length);
      for (const [k, row] of found.entries()) {
        const cells = await row.locator('th, td').allTextContents();
        expect(cells.map((cell) => cell.trim())).toEqual(rows[k]);
      }
      expect(await reader.locator('.sheet').getByText(awkward).count()).toBe(1);
      expect(await reader.locator('.sheet img').count()).toBe(0);
      expect(await reader.locator('.sheet-map svg').count()).toBe(1);
      expect(asked).toEqual([`file://${file}`]);
      await reader.close();
      await bare?.close();
    } finally {
      await app.close();
      rmSync(folder, { recursive: true, force: true });
    }
  });

  it('counts from the tuner’s next visit once it is written down', async () => {
    const app = await open();
    try {
      const { page } = app;
      await showSheet(app);
      await page.getByRole('link', { name: 'The tuner was here' }).click();
      await page.locator('.tuned-page').waitFor();
      await page.getByLabel('Who it was').fill('A new tuner');
      await page.getByLabel('What was done').fill('Coarse tuning.');
      await page.getByRole('button', { name: 'Keep it' }).click();
      await page.getByText('Kept. Take a full round now').waitFor();
      await showSheet(app);
      const sheet = page.locator('.sheet');
      await expect.poll(() => sheet.textContent()).toContain('by A new tuner');
      const text = await sheet.textContent();
      expect(text).toContain('No other round has been taken since');
      expect(text).toContain('None were logged.');
    } finally {
      await app.close();
    }
  });
});

describe('which pans first', () => {
  it('orders the pans for the hours there are, with reasons, and names the notes of two that beat', async () => {
    const app = await open();
    try {
      const { page } = app;
      await show(app, '#/visit', '.visit-pans li');
      // The cards are made one after the other, and the order is whole with the last.
      await page.getByText('Opening the rack').waitFor({ state: 'detached' });
      const order = await page
        .locator('.visit-pans li')
        .evaluateAll((items) => items.map((item) => item.getAttribute('data-pan')));
      // A dead note, and notes far out, weigh most: the lead that fell comes first.
      expect(order[0]).toBe('pan-1');
      expect(new Set(order).size).toBe(order.length);
      await page.getByLabel('Hours the tuner has').fill('1.5');
      await page.getByText('There is time for one pan').waitFor();
      await page.getByRole('button', { name: 'Compare their notes' }).first().click();
      await page.getByText(/beat against each other|None of their common notes/).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('the screens around the tuner', () => {
  it('pass axe, and fit at 320 px and at 200 %', async () => {
    const app = await open();
    try {
      const { page } = app;
      for (const [hash, there] of [
        ['#/pan/pan-1/sheet', '.sheet-table'],
        ['#/pan/pan-1/tuned', '.tuned-page'],
        ['#/visit', '.visit-pans li'],
        ['#/cautions', '.cautions-page'],
        ['#/what-moves', '.what-moves'],
      ] as const) {
        await show(app, hash, there);
        expect(await axeFaults(page), hash).toEqual([]);
        for (const text of ['100%', '200%']) {
          await layOut(page, 320, 740, text);
          const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
          expect(wide, `${hash} at ${text}`).toBeLessThanOrEqual(0);
        }
        await page.evaluate(() => {
          document.documentElement.style.fontSize = '';
        });
      }
    } finally {
      await app.close();
    }
  });
});
