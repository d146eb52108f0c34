// Busy hands: the readout from afar.
import { describe, expect, it } from 'vitest';
import { midiNote } from '../../src/domain/tuning/units';
import { untilDrawn } from './lay-out';
import { openApp } from './open-app';
import { sixStrikes } from './six-strikes';

describe('busy hands', () => {
  it('see the verdict as big as the screen allows, and leave by a tap or any key', async () => {
    const app = await openApp('#/listen', {
      sound: sixStrikes(),
      viewport: { width: 740, height: 360 },
    });
    try {
      const { page } = app;
      await page.goto(`${app.address}#/bench/${midiNote(74)}`);
      await page.locator('main.bench').waitFor();
      await page.getByRole('button', { name: 'Listen', exact: true }).click();
      const large = page.getByRole('button', { name: 'Show it large' });
      await large.click();
      await page.locator('main.far[data-verdict="flat"]').waitFor();
      await untilDrawn(page);
      const lines = await page.locator('.far-line > span').evaluateAll((all) =>
        all.map((line) => {
          const { height, right } = line.getBoundingClientRect();
          return { height, right, text: line.textContent };
        }),
      );
      expect(lines.map(({ text }) => text)).toEqual(['flat', '9']);
      // Two lines on a screen of 360 px: each capital more than 70 px, about 15 mm on a phone.
      for (const { height, right } of lines) {
        expect(height).toBeGreaterThan(90);
        expect(right).toBeLessThanOrEqual(740);
      }
      await page.keyboard.press('b');
      await page.locator('main.bench').waitFor();
      await large.click();
      await page.locator('main.far').click();
      await page.locator('main.bench').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
