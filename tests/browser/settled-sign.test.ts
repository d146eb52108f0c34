// The buzz when a note is settled: chosen in the settings, given on the listening screen and on the bench, once each.
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openApp } from './open-app';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

/** In the page, before the app: a phone that writes down when it is to buzz. */
function standInBuzzer(): void {
  const buzzes: number[] = [];
  Object.assign(window, { buzzes });
  navigator.vibrate = (length) => buzzes.push(Number(length)) > 0;
}
const buzzesOf = (page: Page): Promise<number> =>
  page.evaluate(() => (window as unknown as { buzzes: number[] }).buzzes.length);

it('a settled note buzzes once where that was chosen, and not before', async () => {
  const app = await openApp('#/listen', { beforeApp: [standInEar, standInBuzzer] });
  try {
    const { page } = app;
    const settle = async (listen: string) => {
      await page.getByRole('button', { name: listen, exact: true }).click();
      await untilListening(page);
      await tellStrikes(page, 3);
      await page.locator('#readout[data-state="settled"]').waitFor();
    };
    await settle('Listen');
    expect(await buzzesOf(page)).toBe(0);
    await page.goto(`${app.address}#/settings`);
    await page.getByLabel('a short buzz').check();
    await page.goto(`${app.address}#/listen`);
    await settle('Listen');
    await expect.poll(() => buzzesOf(page)).toBe(1);
    // What the microphone hears of the buzz is no strike: nothing counts for a moment.
    await tellStrikes(page, 1);
    expect(await page.locator('#readout').getAttribute('data-strikes')).toBe('3');
    await page.goto(`${app.address}#/bench/74`);
    await settle('Listen');
    await expect.poll(() => buzzesOf(page)).toBe(2);
    await page.waitForTimeout(300);
    expect(await buzzesOf(page)).toBe(2);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
