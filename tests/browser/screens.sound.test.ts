// What was struck on the screen: as big as it is meant to be, and put right by a tap.
import { describe, expect, it } from 'vitest';
import { leadNote, placed } from '../synthetic-sounds/sounds';
import { bigWords } from './big-words';
import { layOut } from './lay-out';
import { openApp } from './open-app';

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

describe('the screens', () => {
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

  it('put the octave right at one tap, and name the note that rings instead of the expected one', async () => {
    const app = await openApp('#/', { sound: soundOf(-9, 4, 0) });
    try {
      await app.page.getByRole('link', { name: 'Listen' }).click();
      await app.page.locator('#readout[data-note="D5"]').waitFor();
      await app.page.getByRole('button', { name: 'It is an octave higher' }).click();
      await app.page.locator('#readout[data-note="D6"][data-state="heard"]').waitFor();
      const seen = await app.history();
      const read = seen.findLast(({ note }) => note === 'D6');
      // The fundamental is 9 flat and its octave 4 sharp of twice that.
      expect(Math.abs(Number(read?.fundamentalCents) + 5), JSON.stringify(seen)).toBeLessThan(1);
      // The next strike is another D5.
      await app.page.getByText('Not this note: D5 is ringing. Damp it and strike again.').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
