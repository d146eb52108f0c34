// Drawings, choice and editor of layouts in a real Chromium, on a page of their own.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFaults } from './axe-faults';
import { type BuiltPage, buildLayoutPage } from './build-layout-page';
import { layOut, untilDrawn } from './lay-out';
import { openApp } from './open-app';

let built: BuiltPage;
beforeAll(async () => {
  built = await buildLayoutPage();
});
afterAll(() => built.remove());

type Options = Parameters<typeof openApp>[1];
const open = (route: string, options: Options = {}) =>
  openApp(route, { directory: built.directory, ...options });

/** What the screen handed to its caller. */
const handed = async (page: Page): Promise<unknown> =>
  JSON.parse((await page.locator('#handed').textContent()) ?? 'null');

const middleOf = (page: Page, label: string) =>
  page.getByRole('button', { name: label }).evaluate((note) => {
    const box = note.querySelector('.field-oval')?.getBoundingClientRect() ?? new DOMRect();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  });

/** Round each note at 21.5 px: whatever a finger there would strike instead. */
function strangersUnderFingers(): { readonly count: number; readonly found: readonly string[] } {
  const found: string[] = [];
  const all = [...document.querySelectorAll('.note[role="button"]')];
  for (const note of all) {
    note.scrollIntoView({ block: 'center' });
    const box = note.querySelector('.field-oval')?.getBoundingClientRect() ?? new DOMRect();
    for (let k = 0; k < 16; k++) {
      const angle = (k * Math.PI) / 8;
      const x = box.x + box.width / 2 + 21.5 * Math.cos(angle);
      const y = box.y + box.height / 2 + 21.5 * Math.sin(angle);
      const struck = document.elementFromPoint(x, y)?.closest('.note');
      if (struck !== note) found.push(`${note.textContent}: ${struck?.textContent}`);
    }
  }
  return { count: all.length, found };
}

const routes = [
  ['#drawing/double-second/marks', null],
  ['#drawing/six-bass-b/marks', null],
  ['#editor/double-second', 'Choose C5'],
  ['#editor/low-c-lead', null],
  ['#editor/twelve-bass', null],
  ['#chooser', null],
] as const;

describe('layouts on the screen', () => {
  for (const [route, tap] of routes) {
    it(`${route} pass axe in both themes, have targets of 44 px and fit at 360, 320 and 200 %`, async () => {
      const app = await open(route, { bypassPolicy: true });
      try {
        if (tap) await app.page.getByRole('button', { name: tap }).click();
        for (const theme of ['dark', 'light'] as const) {
          await app.page.evaluate((name) => {
            document.documentElement.dataset['theme'] = name;
          }, theme);
          expect(await axeFaults(app.page), theme).toEqual([]);
        }
        for (const [width, text] of [
          [360, '100%'],
          [320, '100%'],
          [320, '200%'],
        ] as const) {
          await layOut(app.page, width, 640, text);
          const seen = await app.page.evaluate(() => {
            const controls = [
              ...document.querySelectorAll(
                'a, button, select, summary, input:not([type="radio"], [type="checkbox"]), .choice',
              ),
            ].map((element) => ({ element, box: element.getBoundingClientRect() }));
            return {
              wider: document.documentElement.scrollWidth - window.innerWidth,
              small: controls
                .filter(({ box }) => Math.min(box.height, box.width) < 44)
                .map(({ element }) => element.textContent),
              cut: controls
                .filter(
                  ({ element, box }) =>
                    box.left < -0.5 ||
                    box.right > window.innerWidth + 0.5 ||
                    element.scrollWidth > element.clientWidth + 1,
                )
                .map(({ element }) => element.textContent),
            };
          });
          expect(seen, `${width} px at ${text}`).toEqual({ wider: 0, small: [], cut: [] });
        }
      } finally {
        await app.close();
      }
    });
  }

  // WCAG 2.2, 2.5.5: 44 CSS px.
  it('give every note of every kind of drawing a finger of 44 px at 320 px', async () => {
    const app = await open('#drawing/double-second', { viewport: { width: 320, height: 640 } });
    try {
      const { page } = app;
      const counts: Record<string, number> = {};
      for (const id of [
        'double-second',
        'triple-cello',
        'tenor-bass-24',
        'six-bass-b',
        'twelve-bass',
      ]) {
        await page.evaluate((hash) => {
          location.hash = hash;
        }, `#drawing/${id}`);
        await page.locator(`[data-layout="${id}"]`).waitFor();
        const tabs = await page.locator('.drum-tabs button').count();
        counts[id] = 0;
        for (let k = 0; k < Math.max(1, tabs); k++) {
          if (tabs > 0) await page.locator('.drum-tabs button').nth(k).click();
          const { count, found } = await page.evaluate(strangersUnderFingers);
          expect(found, id).toEqual([]);
          counts[id] += count;
        }
      }
      expect(counts).toEqual({
        'double-second': 32,
        'triple-cello': 24,
        'tenor-bass-24': 24,
        'six-bass-b': 18,
        'twelve-bass': 36,
      });
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('show the drum of the chosen note, and say each state by sign and shape', async () => {
    const app = await open('#drawing/double-second/marks');
    try {
      await app.page.getByRole('button', { name: 'right' }).click();
      await app.page.getByRole('button', { name: 'Choose G3' }).press('Enter');
      await app.page.locator('main[data-chosen="55"]').waitFor();
      expect(
        await app.page.getByRole('button', { name: 'Choose G3' }).getAttribute('aria-current'),
      ).toBe('true');
      // The marks of the test page: every seventh note is 16 flat.
      const flat = app.page.locator('.pan-drawing .note.shape-filled').first();
      expect(await flat.textContent()).toContain('−16');
    } finally {
      await app.close();
    }
  });
});

describe('the editor of a layout', () => {
  it('chooses by a tap, follows a finger only with the chosen note, undoes, and hands the layout over', async () => {
    const app = await open('#editor/low-c-lead');
    try {
      const { page } = app;
      const touch = await app.context.newCDPSession(page);
      const swipe = async (from: { x: number; y: number }, right: number, down: number) => {
        const at = (part: number) => [{ x: from.x + part * right, y: from.y + part * down }];
        await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
        for (const part of [0.25, 0.5, 0.75, 1]) {
          await touch.send('Input.dispatchTouchEvent', {
            type: 'touchMove',
            touchPoints: at(part),
          });
        }
        await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
      };
      await untilDrawn(page);
      const before = await middleOf(page, 'Choose C6');
      await swipe(before, 0, -60);
      // The page has scrolled, for as long as it took; back at its beginning all is where it was.
      await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(0);
      const atTheBeginning = async () => {
        await page.evaluate(() => window.scrollTo(0, 0));
        return middleOf(page, 'Choose C6');
      };
      await expect.poll(atTheBeginning).toEqual(before);

      await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [before] });
      await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
      await page.getByRole('button', { name: 'C6, chosen' }).waitFor();
      const scrolled = await page.evaluate(() => window.scrollY);
      await swipe(before, 10, -30);
      const moved = async () => {
        const { x, y } = await middleOf(page, 'C6, chosen');
        return [Math.round(x - before.x), Math.round(y - before.y)];
      };
      await expect.poll(moved).toEqual([10, -30]);
      expect(await page.evaluate(() => window.scrollY)).toBe(scrolled);

      await page.getByRole('button', { name: 'Undo' }).click();
      expect((await middleOf(page, 'C6, chosen')).y).toBeCloseTo(before.y, 1);
      await page.getByRole('button', { name: 'Redo' }).click();
      await page.getByRole('button', { name: 'Save' }).click();
      const layout = (await handed(page)) as {
        drums: { notes: { note: number; clock: number; radius: number }[] }[];
      };
      const c6 = layout.drums[0]?.notes.find(({ note }) => note === 84);
      // C6 lay at 6.3 h, 0.258 rim radii from the middle; 30 px of 177 are 0.17.
      expect(c6?.radius).toBeLessThan(0.13);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('is reachable by keyboard: Enter chooses, arrow keys move, one undo takes the walk back', async () => {
    const app = await open('#editor/low-c-lead');
    try {
      const { page } = app;
      await untilDrawn(page);
      const before = await middleOf(page, 'Choose C6');
      await page.getByRole('button', { name: 'Choose C6' }).press('Enter');
      for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowUp');
      const after = await middleOf(page, 'C6, chosen');
      expect(after.x - before.x).toBeGreaterThan(12);
      expect(after.y).toBeLessThan(before.y - 2);
      await page.getByRole('button', { name: 'Undo' }).click();
      expect((await middleOf(page, 'C6, chosen')).x).toBeCloseTo(before.x, 1);
    } finally {
      await app.close();
    }
  });

  it('refuses a doubled note in a sentence and shows the old name again', async () => {
    const app = await open('#editor/double-second');
    try {
      const { page } = app;
      await page.getByRole('button', { name: 'Choose F♯3' }).click();
      const note = page.getByRole('combobox', { name: 'Note', exact: true });
      await note.selectOption('60');
      await page.getByText('C4 is on this pan already. Nothing was changed.').waitFor();
      expect(await note.inputValue()).toBe('54');
      await note.selectOption('53');
      await page.getByRole('button', { name: 'F3, chosen' }).waitFor();
      await page.getByText('F♯3 is missing.').waitFor();
      await page.getByLabel('Third partial').selectOption('twelfth');
      await page.getByRole('button', { name: 'One cent lower' }).click();
      await page.getByLabel('On drum').selectOption('1');
      await page.getByRole('button', { name: 'right', pressed: true }).waitFor();
      await page.getByRole('button', { name: 'I have checked it' }).click();
      await page.getByRole('button', { name: 'Save' }).click();
      const layout = (await handed(page)) as {
        doubts?: unknown;
        drums: { notes: { note: number; third?: string; offset?: number }[] }[];
      };
      expect(layout.drums[1]?.notes.find(({ note: midi }) => midi === 53)).toMatchObject({
        third: 'twelfth',
        offset: -1,
      });
      expect(layout.doubts).toBeUndefined();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('asks once more before changes are thrown away, and not where there are none', async () => {
    const app = await open('#editor/six-bass-b');
    try {
      const { page } = app;
      await page.getByRole('button', { name: 'Turn right' }).click();
      await page.getByRole('button', { name: 'Cancel' }).click();
      await page.getByText('Your changes are not saved.').waitFor();
      await page.getByRole('button', { name: 'Go on changing' }).click();
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByRole('button', { name: 'Cancel' }).click();
      expect(await handed(page)).toBe('cancelled');
    } finally {
      await app.close();
    }
  });
});

describe('the choice of a layout', () => {
  it('shows source and doubts, and hands over the mirror image', async () => {
    const app = await open('#chooser');
    try {
      const { page } = app;
      await page.getByText('29 notes on one drum · C4 to E6').waitFor();
      await page.getByLabel('Lead, high D').check();
      await page.getByText('D4 to F♯6').waitFor();
      await page.getByText('Please check against your pan').waitFor();
      await page.getByText('Where this comes from').click();
      await page.getByText('Derived from the range D4 to F#6').waitFor();
      await page.getByLabel('Mirror image').check();
      await page.getByRole('button', { name: 'Take this layout' }).click();
      expect(await handed(page)).toMatchObject({
        family: 'lead',
        kind: 'placed',
        layout: { id: 'high-d-lead-mirrored' },
      });
    } finally {
      await app.close();
    }
  });

  it('says of a pan without published places that the player arranges them', async () => {
    const app = await open('#chooser');
    try {
      const { page } = app;
      await page.getByLabel('Kind of pan').selectOption('quads');
      await page.getByText(/No published positions. This is a start of ours/).waitFor();
      await page.getByRole('button', { name: 'Take it and drag its notes' }).click();
      expect(await handed(page)).toMatchObject({ family: 'quads', kind: 'unplaced' });
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
