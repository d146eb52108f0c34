// The open page once all of it is where it belongs, also in another size.
import type { Page } from 'playwright-core';

/** Resolves once the typeface is there and what is fitted to its room is fitted. */
export async function untilDrawn(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await document.fonts.ready;
    // A frame finds out how much room there is, and the next one has drawn what follows from it.
    for (const _ of [1, 2]) await new Promise((drawn) => requestAnimationFrame(drawn));
  });
}

/** Makes the window so many CSS px wide and high, and the text this size ("200%"; "" is the page's own). */
export async function layOut(
  page: Page,
  width: number,
  height: number,
  textSize = '',
): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.evaluate((size) => {
    document.documentElement.style.fontSize = size;
  }, textSize);
  await page.waitForFunction((wanted) => window.innerWidth === wanted, width);
  await untilDrawn(page);
}
