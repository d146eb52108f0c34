// How big the message of the readout is, once it is drawn.
import type { Page } from 'playwright-core';

/**
 * Height of the capitals of each big line and number, and where it stands, CSS px: as soon as this verdict is drawn,
 * for the next strike may say something else.
 */
export const bigWords = (page: Page, verdict: string) =>
  page.evaluate(async (wanted) => {
    const painter = document.createElement('canvas').getContext('2d');
    if (!painter) throw new Error('no canvas');
    const measured = () =>
      [...document.querySelectorAll('.huge, .digits')].map((element) => {
        const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
        painter.font = `${fontWeight} ${fontSize} ${fontFamily}`;
        const { top, bottom } = element.getBoundingClientRect();
        return { capital: painter.measureText('H').actualBoundingBoxAscent, top, bottom };
      });
    // Fitted to its room, and with its typeface: drawn twice in the same way.
    for (let before = ''; ; ) {
      await document.fonts.ready;
      await new Promise((drawn) => requestAnimationFrame(drawn));
      const isShown = document.getElementById('readout')?.dataset['verdict'] === wanted;
      const now = isShown ? measured() : [];
      if (now.length > 0 && JSON.stringify(now) === before) return now;
      before = JSON.stringify(now);
    }
  }, verdict);
