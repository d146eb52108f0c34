// Every screen: readable, reachable, nothing cut, nothing that axe finds.
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { leadNote, placed } from '../synthetic-sounds/sounds';
import { openApp } from './open-app';

const axePath = createRequire(import.meta.url).resolve('axe-core');
const sampleRate = 44_100;
const d5 = 440 * 2 ** (5 / 12);
const soundOf = (fundamental: number, octave: number, third: number) => ({
  samples: placed(
    [1.2, 2.8, 4.4].map((at) => ({
      at,
      samples: leadNote({ target: d5, fundamental, octave, third, thirdTimes: 4 }, sampleRate),
    })),
    { sampleRate, seconds: 6 },
  ),
  sampleRate,
});

interface AxeWindow {
  readonly axe: {
    run(): Promise<{
      readonly violations: readonly { readonly id: string; readonly help: string }[];
    }>;
  };
}

describe('the screens', () => {
  for (const theme of ['light', 'dark'] as const) {
    for (const route of ['#/', '#/listen', '#/practice', '#/settings']) {
      it(`${route} in the ${theme} theme pass axe and have targets of 44 px`, async () => {
        const app = await openApp(route, { theme, bypassPolicy: true });
        try {
          await app.page.addScriptTag({ path: axePath });
          const found = await app.page.evaluate(async () => {
            const { violations } = await (window as unknown as AxeWindow).axe.run();
            return violations.map(({ id, help }) => `${id}: ${help}`);
          });
          expect(found).toEqual([]);
          const small = await app.page.evaluate(() =>
            [...document.querySelectorAll('a, button, select, input:not([type="radio"]), .choice')]
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
    ['flat', -9, 0, 0],
    ['aligned', 0, 0, 0],
    ['octave-sharp', 0, 12, 0],
    ['third-sharp', 0, 0, 16],
  ] as const;
  for (const [verdict, fundamental, octave, third] of verdicts) {
    it(`${verdict} is shown in capitals of 96 px and more that fit at 360, 320 and 200 %`, async () => {
      const app = await openApp('#/', { sound: soundOf(fundamental, octave, third) });
      try {
        await app.page.getByRole('link', { name: 'Listen' }).click();
        await app.page.locator(`#readout[data-verdict="${verdict}"]`).waitFor({ timeout: 10_000 });
        const sizes = await app.page.evaluate(() => {
          const painter = document.createElement('canvas').getContext('2d');
          if (!painter) throw new Error('no canvas');
          return [...document.querySelectorAll('.huge, .digits')].map((element) => {
            const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
            painter.font = `${fontWeight} ${fontSize} ${fontFamily}`;
            const { bottom } = element.getBoundingClientRect();
            return { capital: painter.measureText('H').actualBoundingBoxAscent, bottom };
          });
        });
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
          await app.page.setViewportSize({ width, height: 640 });
          await app.page.evaluate((size) => {
            document.documentElement.style.fontSize = size;
          }, text);
          await app.page.waitForTimeout(150);
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
      await app.page.waitForTimeout(300);
      await app.page.reload();
      await app.page.getByText('Now A = 442 Hz.').waitFor();
    } finally {
      await app.close();
    }
  });
});
