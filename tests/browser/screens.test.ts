// Every screen: readable, reachable, nothing cut, nothing that axe finds.
import { describe, expect, it } from 'vitest';
import { axeFaults } from './axe-faults';
import { bigWords } from './big-words';
import { keptSettings } from './kept-records';
import { layOut, untilDrawn } from './lay-out';
import { openApp } from './open-app';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

/** What a browser does on a page that did not come over https. */
function removeDevices(): void {
  Object.defineProperty(navigator, 'mediaDevices', { value: undefined });
}

describe('the screens', () => {
  for (const theme of ['light', 'dark'] as const) {
    for (const [route, there] of [
      ['#/', 'text=No pans are kept here yet.'],
      ['#/listen', '#readout'],
      ['#/practice', '.note'],
      ['#/settings', '#hand-keys'],
      ['#/add-pan', '.note'],
      ['#/backup', 'text=nothing to back up'],
    ] as const) {
      it(`${route} in the ${theme} theme pass axe and have targets of 44 px`, async () => {
        const app = await openApp(route, { theme, bypassPolicy: true });
        try {
          await app.page.locator(there).first().waitFor();
          expect(await axeFaults(app.page)).toEqual([]);
          const small = await app.page.evaluate(() =>
            [
              ...document.querySelectorAll(
                // The whole line of a choice is its target.
                'a, button, select, input:not([type="radio"], [type="checkbox"]), .choice',
              ),
            ]
              // What is folded away is no target.
              .filter((element) => element.checkVisibility())
              .map((element) => ({
                text: element.textContent,
                height: element.getBoundingClientRect().height,
              }))
              .filter(({ height }) => height < 44),
          );
          expect(small).toEqual([]);
        } finally {
          await app.close();
        }
      });
    }
  }

  const verdicts = [
    ['flat', { fundamental: -9, octave: 0, third: 0 }],
    ['aligned', { fundamental: 0, octave: 0, third: 0 }],
    ['octave-sharp', { fundamental: 0, octave: 12, third: 0 }],
    ['third-sharp', { fundamental: 0, octave: 0, third: 16 }],
  ] as const;
  for (const [verdict, sketch] of verdicts) {
    it(`${verdict} is shown in capitals of 96 px and more that fit at 360, 320 and 200 %`, async () => {
      const app = await openApp('#/', { beforeApp: standInEar });
      try {
        await app.page.getByRole('link', { name: 'Listen' }).click();
        await untilListening(app.page);
        await tellStrikes(app.page, 3, { ...sketch, thirdKind: 'double-octave' });
        await app.page.locator(`#readout[data-verdict="${verdict}"]`).waitFor();
        const sizes = await bigWords(app.page, verdict);
        expect(sizes.length).toBeGreaterThan(1);
        for (const { capital, bottom } of sizes) {
          expect(capital).toBeGreaterThanOrEqual(96);
          expect(bottom).toBeLessThanOrEqual(640);
        }
        for (const [width, text] of [
          [360, '100%'],
          [320, '100%'],
          [360, '200%'],
        ] as const) {
          await layOut(app.page, width, 640, text);
          const cut = await app.page.evaluate(() => ({
            page: document.documentElement.scrollWidth - window.innerWidth,
            lines: [...document.querySelectorAll('.fit-line, .number, td, th, button, .button')]
              .filter((element) => {
                const { left, right } = element.getBoundingClientRect();
                return left < -0.5 || right > window.innerWidth + 0.5;
              })
              .map((element) => element.textContent),
          }));
          expect(cut, `${width} px at ${text}`).toEqual({ page: 0, lines: [] });
        }
        expect(app.problems).toEqual([]);
      } finally {
        await app.close();
      }
    });
  }

  // WCAG 2.2, 2.5.5: 44 CSS px.
  for (const width of [360, 320]) {
    it(`give every note of the practice pan a finger of 44 px at ${width} px`, async () => {
      const app = await openApp('#/practice', { viewport: { width, height: 640 } });
      try {
        await app.page.locator('.note').first().waitFor();
        await untilDrawn(app.page);
        const faults = await app.page.evaluate(() => {
          const notes = [...document.querySelectorAll('.note')].map((note) => {
            const { left, right, top, bottom } =
              note.querySelector('.field-oval')?.getBoundingClientRect() ?? new DOMRect();
            return { note, x: (left + right) / 2, y: (top + bottom) / 2 };
          });
          const found: string[] = [];
          for (const { note, x, y } of notes) {
            const name = note.textContent;
            const box = note.querySelector('.touch')?.getBoundingClientRect() ?? new DOMRect();
            if (Math.min(box.width, box.height) < 44) found.push(`${name}: ${box.width} px`);
            const struckAt = (right: number, down: number): Element | null | undefined =>
              document.elementFromPoint(x + right, y + down)?.closest('.note');
            for (let k = 0; k < 16; k++) {
              const angle = (k * Math.PI) / 8;
              const struck = struckAt(21.5 * Math.cos(angle), 21.5 * Math.sin(angle));
              if (struck !== note) found.push(`${name}: ${k / 16} turn is ${struck?.textContent}`);
            }
            // The corners of the square belong to this note, or to one whose middle is nearer (to 1 px).
            for (const [right, down] of [
              [21.5, 21.5],
              [21.5, -21.5],
              [-21.5, 21.5],
              [-21.5, -21.5],
            ] as const) {
              const struck = struckAt(right, down);
              const middle = notes.find((other) => other.note === struck);
              const away = middle && Math.hypot(middle.x - x - right, middle.y - y - down);
              if (away === undefined || away > Math.hypot(right, down) + 1) {
                found.push(`${name}: ${right}, ${down} is ${struck?.textContent}`);
              }
            }
          }
          return { count: notes.length, found };
        });
        expect(faults).toEqual({ count: 29, found: [] });
      } finally {
        await app.close();
      }
    });
  }

  // B4 of the practice pan: 13 cents sharp at 440 Hz, true at 443.32 Hz with its octave 9 sharp.
  for (const [a4, verdict] of [
    ['440', 'sharp'],
    ['443.32', 'octave-sharp'],
  ] as const) {
    it(`show ${verdict} over the whole practice pan at 360 x 640, and leave the pan where it was`, async () => {
      const app = await openApp('#/settings');
      try {
        await app.page.getByLabel('Band pitch, A4 in Hz').fill(a4);
        await app.page.getByRole('button', { name: 'Set' }).click();
        await app.page.getByText(`Now A = ${a4} Hz.`).waitFor();
        await app.page.goto(`${app.address}#/practice`);
        const pan = app.page.locator('.pan-drawing');
        await pan.waitFor();
        await untilDrawn(app.page);
        const before = await pan.boundingBox();
        await app.page.getByRole('button', { name: 'Strike B4' }).click();
        await app.page.locator(`#readout[data-verdict="${verdict}"]`).waitFor();
        const sizes = await bigWords(app.page, verdict);
        expect(sizes).toHaveLength(2);
        for (const { capital, top, bottom } of sizes) {
          expect(capital).toBeGreaterThanOrEqual(96);
          expect(top).toBeGreaterThanOrEqual(0);
          expect(bottom).toBeLessThanOrEqual(before?.y ?? 0);
        }
        expect(await pan.boundingBox()).toEqual(before);
        expect((before?.y ?? 0) + (before?.height ?? 640)).toBeLessThanOrEqual(640);
        expect(app.problems).toEqual([]);
      } finally {
        await app.close();
      }
    });
  }

  it('and the bars of the browser follow the chosen theme, and the phone while none is chosen', async () => {
    const app = await openApp('#/settings', { theme: 'dark' });
    try {
      const [dark, light] = ['#17130f', '#fffdf8'];
      const shown = () =>
        app.page.evaluate(() => ({
          theme: document.documentElement.dataset['theme'],
          bars: [...document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')]
            .filter(({ media }) => media === '' || matchMedia(media).matches)
            .map(({ content }) => content),
          ground: getComputedStyle(document.body).backgroundColor,
        }));
      const darkPage = { theme: 'dark', bars: [dark], ground: 'rgb(23, 19, 15)' };
      const lightPage = { theme: 'light', bars: [light], ground: 'rgb(255, 253, 248)' };
      await expect.poll(shown).toEqual(darkPage);
      await app.page.getByLabel('Light', { exact: true }).check();
      await expect.poll(shown).toEqual(lightPage);
      await app.page.emulateMedia({ colorScheme: 'light' });
      await app.page.getByLabel('Dark').check();
      await expect.poll(shown).toEqual(darkPage);
      await app.page.getByLabel('Like the phone').check();
      await expect.poll(shown).toEqual(lightPage);
      await app.page.emulateMedia({ colorScheme: 'dark' });
      await expect.poll(shown).toEqual(darkPage);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('say where to open the app when its address gives it no microphone', async () => {
    const app = await openApp('#/listen', { beforeApp: removeDevices });
    try {
      await app.page.getByRole('button', { name: 'Listen' }).click();
      await app.page.getByText('address starts with https').waitFor();
      expect(await app.page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('refuse a band pitch of 500 Hz in a sentence, keep 442, and remember it', async () => {
    const app = await openApp('#/settings');
    try {
      const field = app.page.getByLabel('Band pitch, A4 in Hz');
      await field.fill('500');
      await field.press('Enter');
      await app.page.getByText('Enter a number from 400 to 480.').waitFor();
      await field.fill('442');
      await field.press('Enter');
      await app.page.getByText('Now A = 442 Hz.').waitFor();
      await expect.poll(() => keptSettings(app.page)).toMatchObject({ a4: 442 });
      await app.page.reload();
      await app.page.getByText('Now A = 442 Hz.').waitFor();
    } finally {
      await app.close();
    }
  });
});
