// The map of a pan on a phone: no line runs through what is written on it, and nothing on it is too small to read.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { notesOf, type PanLayout } from '../../src/domain/pans/layout';
import { lowCLead } from '../../src/domain/pans/layouts/low-c-lead';
import { sixBassB } from '../../src/domain/pans/layouts/six-bass-b';
import type { MarkKind } from '../../src/domain/records/rack-records';
import { untilDrawn } from './lay-out';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

/** In the page: the texts on the map, and which of them a line touches. */
function writtenOnTheMap() {
  interface Written {
    readonly text: string;
    readonly px: number;
    readonly isNumber: boolean;
  }
  const written: Written[] = [];
  const crossed: string[] = [];
  for (const map of document.querySelectorAll<SVGSVGElement>('svg.pan-drawing')) {
    const toScreen = (of: SVGGraphicsElement) => of.getScreenCTM() ?? new DOMMatrix();
    const scale = toScreen(map).a;
    const boxes = [...map.querySelectorAll('text')].map((text) => {
      const size = Number.parseFloat(getComputedStyle(text).fontSize);
      const { x, y } = text.getStartPositionOfChar(0).matrixTransform(toScreen(text));
      // From the feet of the letters to the tops of the capitals.
      return {
        text: text.textContent ?? '',
        size: size * scale,
        isNumber: text.classList.contains('mark-text'),
        left: x,
        right: x + text.getComputedTextLength() * scale,
        top: y - 0.7 * size * scale,
        bottom: y,
      };
    });
    for (const { text, size, isNumber } of boxes) written.push({ text, px: size, isNumber });
    const lines = map.querySelectorAll<SVGGeometryElement>(
      '.rim, .field-oval, .oval-half, .oval-cross',
    );
    for (const line of lines) {
      const style = getComputedStyle(line);
      if (style.stroke === 'none') continue;
      const half = (Number.parseFloat(style.strokeWidth) * scale) / 2;
      const length = line.getTotalLength();
      for (let at = 0; at <= length; at += 0.5) {
        const { x, y } = line.getPointAtLength(at).matrixTransform(toScreen(line));
        const hit = boxes.find(
          ({ left, right, top, bottom }) =>
            x + half > left && x - half < right && y + half > top && y - half < bottom,
        );
        if (hit) {
          crossed.push(`${hit.text} by ${line.getAttribute('class')}`);
          break;
        }
      }
    }
  }
  return { written, crossed };
}

/** Every shape of the map: good, playable, out and avoid, in turn, and one note with each mark. */
const off = (layout: PanLayout) =>
  Object.fromEntries(
    notesOf(layout).map((note, k) => [
      note,
      { fundamental: [2, -9, 18, -28, 11, -16][k % 6] ?? 0 },
    ]),
  );
const marked = (layout: PanLayout): Record<number, MarkKind> => {
  const [first = 0, second = 0] = notesOf(layout).slice(-2);
  return { [first]: 'dead', [second]: 'buzzing' };
};

const shapes = (page: Page) =>
  page
    .locator('.pan-drawing .note')
    .evaluateAll((notes) =>
      [
        ...new Set(notes.map((note) => /shape-\w+/.exec(note.getAttribute('class') ?? '')?.[0])),
      ].sort(),
    );

describe('the map of a pan at 360 x 740', () => {
  for (const [layout, numbers] of [
    [lowCLead, 27],
    [sixBassB, 18],
  ] as const) {
    it(`of ${notesOf(layout).length} notes has no line through a letter, and no letters under 12 px`, async () => {
      const app = await openWithRecords(
        '#/pan/pan-1',
        { records: panWith({ layout }, [{ off: off(layout) }], marked(layout)) },
        { viewport: { width: 360, height: 740 } },
      );
      try {
        await app.page.locator('.standing-map .mark-text').first().waitFor();
        await untilDrawn(app.page);
        const { written, crossed } = await app.page.evaluate(writtenOnTheMap);
        expect(crossed).toEqual([]);
        expect(written.filter(({ px }) => px < 12)).toEqual([]);
        // What does not fit is left out, but that is rare: nearly all notes have their number.
        expect(written.filter(({ isNumber }) => isNumber).length).toBeGreaterThanOrEqual(numbers);
        expect(written.filter(({ isNumber }) => !isNumber)).toHaveLength(notesOf(layout).length);
        expect(await shapes(app.page)).toEqual([
          'shape-crossed',
          'shape-filled',
          'shape-half',
          'shape-outline',
        ]);
        expect(app.problems).toEqual([]);
      } finally {
        await app.close();
      }
    });
  }

  for (const height of [740, 640]) {
    it(`and the drum of the note that a round asks for, ${height} px high, are no smaller`, async () => {
      const open = { isOpen: true, off: off(sixBassB) };
      // Two notes are heard, all others are to come.
      const heard = notesOf(sixBassB).slice(0, 2);
      const records = panWith({ layout: sixBassB }, [open]).filter(
        (record) => record.kind !== 'reading' || heard.includes(record.note),
      );
      const app = await openWithRecords(
        '#/pan/pan-1/round/round-0',
        { records },
        { viewport: { width: 360, height } },
      );
      try {
        const { page } = app;
        await page.locator('.asked-first .pan-drawing').waitFor();
        // Of six drums the one that has the two notes that were heard.
        for (const tab of await page.locator('.drum-tabs button').all()) {
          await tab.click();
          if ((await page.locator('.asked-first .mark-text').count()) > 0) break;
        }
        await untilDrawn(page);
        const { written, crossed } = await page.evaluate(writtenOnTheMap);
        expect(crossed).toEqual([]);
        expect(written.filter(({ isNumber }) => isNumber).length).toBeGreaterThan(0);
        expect(written.filter(({ px }) => px < 12)).toEqual([]);
        expect(app.problems).toEqual([]);
      } finally {
        await app.close();
      }
    });
  }
});
