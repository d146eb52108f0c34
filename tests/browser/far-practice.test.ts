// The large view on the two screens for practice: from their bar, and back with any key or a tap.
import { expect, it } from 'vitest';
import { openApp } from './open-app';

for (const [route, level] of [
  ['#/practice', null],
  ['#/practice-bench', 'one-flat'],
] as const) {
  it(`${route} shows its reading as big as the screen, and leads back to the pan that was struck`, async () => {
    const app = await openApp(route, { viewport: { width: 360, height: 740 } });
    try {
      const { page } = app;
      if (level) await page.locator(`[data-level="${level}"]`).click();
      await page.getByRole('button', { name: 'Strike D5' }).click();
      const readout = page.locator('#readout');
      // The last word on one strike of a simulated pan.
      await expect.poll(() => readout.getAttribute('data-strikes')).toBe('1');
      const verdict = await readout.getAttribute('data-verdict');
      const large = page.locator('footer.actions').getByRole('button', { name: 'Show it large' });
      for (const leave of ['key', 'tap'] as const) {
        await large.click();
        const far = page.locator('main.far');
        await far.waitFor();
        expect(await far.getAttribute('data-verdict')).toBe(verdict);
        expect(await far.textContent()).toContain('D5');
        // The words are most of the screen.
        const lines = await far.locator('.far-lines').boundingBox();
        expect(lines?.height ?? 0).toBeGreaterThan(0.6 * 740);
        if (leave === 'key') await page.keyboard.press('PageDown');
        else await far.getByRole('button').click();
        await page.locator('main.practice .pan-drawing').waitFor();
        expect(await readout.getAttribute('data-strikes')).toBe('1');
      }
      // The pan sounds as before.
      await page.getByRole('button', { name: 'Strike D5' }).click();
      await expect.poll(() => readout.getAttribute('data-strikes')).toBe('2');
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
}
