// The helper beside the van: from the first screen to the answer, sent to somebody who is not there.
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Strike } from '../../src/domain/measurement/strike';
import { hertz } from '../../src/domain/tuning/units';
import { strikeSample } from '../domain/reading/strike-sample';
import { countTaps } from './counted-taps';
import { downloaded } from './downloaded';
import { button, faultsOf } from './knock-steps';
import { openApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { sayHeard, standInEar, untilListening } from './stand-in-ear';

const phone = { width: 360, height: 740 } as const;

/** Three strikes of a note that lies so many cents off, its partials true to it. */
function strikesOn(note: number, off: number, heard: number): readonly Strike[] {
  const own = 440 * 2 ** ((note - 69) / 12 + off / 1200);
  return [0, 1, 2].map((k) => {
    const sketch = { note, fundamental: off, octave: 0, third: null, event: 10 * heard + k + 1 };
    const strike = strikeSample(sketch);
    return {
      ...strike,
      fundamental: { ...strike.fundamental, hz: hertz(own) },
      octave: strike.octave && { ...strike.octave, hz: hertz(2 * own) },
    };
  });
}

/** As if all notes of the soft round had been struck three times. */
async function strikeAll(page: Page, off: Readonly<Record<number, number>>): Promise<void> {
  const done = () => page.locator('.round').getAttribute('data-done');
  for (let heard = 0; heard < 29; heard++) {
    const note = Number(await page.locator('.round').getAttribute('data-next'));
    await sayHeard(page, strikesOn(note, off[note] ?? 0, heard));
    if (heard < 28) await expect.poll(done).toBe(String(heard + 1));
  }
}

/** Width and height of a PNG (PNG specification, 3rd edition, 11.2.2: the first chunk is IHDR). */
function sizeOfPng(bytes: Buffer): readonly [number, number] {
  expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  expect(bytes.toString('latin1', 12, 16)).toBe('IHDR');
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}

describe('a helper whose band keeps its pans in the app', () => {
  it('sends "play it without D4 and A4" as a picture in at most 12 taps', async () => {
    const records = panWith({}, [{ day: 0 }]);
    const app = await openWithRecords(
      '#/',
      { records },
      { beforeApp: standInEar, bypassPolicy: true, viewport: phone },
    );
    const { page } = app;
    try {
      const hand = countTaps();
      await hand.tap(page.getByRole('link', { name: 'A pan was dropped' }));
      await hand.tap(page.locator('.dropped').getByRole('link', { name: 'Heron' }));
      await page.locator('.look').waitFor();
      for (let look = 0; look < 8; look++) {
        // Each with its own picture, and all three answers on the screen at once.
        const step = await page.locator('main').getAttribute('data-step');
        expect(await page.locator(`[data-picture="${step}"]`).isVisible()).toBe(true);
        await hand.tap(button(page, 'No'));
        await page.locator(`main:not([data-step="${step}"])`).waitFor();
      }
      expect(await page.locator('.next-steps li').count()).toBe(3);
      await hand.tap(button(page, 'Start the soft round'));
      await untilListening(page);
      await strikeAll(page, { 62: -35, 69: -40 });
      await page.locator('.sentence').waitFor();
      expect(await page.locator('.sentence').textContent()).toBe('Play it without D4 and A4.');
      const sending = page.waitForEvent('download');
      await hand.tap(button(page, 'Send this to the band leader'));
      const download = await sending;
      expect(download.suggestedFilename()).toMatch(/^Heron tonight .*\.png$/);
      const [width, height] = sizeOfPng(await downloaded(download));
      expect(width).toBe(1080);
      expect(height).toBeGreaterThan(1000);
      expect(hand.taps, 'taps').toBeLessThanOrEqual(12);
      expect(hand.scrolls, 'scrolls').toBeLessThanOrEqual(2);
      expect(await faultsOf(app)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('a helper who does not know the kind of the pan', () => {
  it('is led by the number of drums and the pictures, and can go on without a drawing', async () => {
    const app = await openApp('#/dropped', { bypassPolicy: true, viewport: phone });
    const { page } = app;
    try {
      await button(page, 'I don’t know').waitFor();
      // Every kind is a picture of its drums with their notes.
      const kinds = page.locator('.pan-kinds button');
      expect(await kinds.count()).toBe(16);
      const bass = kinds.filter({ hasText: 'Twelve bass' });
      expect(await bass.locator('.rim').count()).toBe(12);
      expect(await bass.locator('.field-oval').count()).toBe(36);
      expect(await faultsOf(app)).toEqual([]);
      await button(page, 'I don’t know').click();
      await button(page, '3 drums').click();
      expect(await kinds.count()).toBe(2);
      for (const rims of await kinds.all()) expect(await rims.locator('.rim').count()).toBe(3);
      expect(await faultsOf(app)).toEqual([]);
      await button(page, 'None of these: go on without a drawing').click();
      await page.locator('.look').waitFor();
      await button(page, 'No').click();
      await button(page, 'Not sure').click();
      expect(await page.locator('main').getByRole('status').textContent()).toContain('go on');
      expect(await faultsOf(app)).toEqual([]);
      await button(page, 'Next').click();
      for (let look = 2; look < 8; look++) {
        const step = await page.locator('main').getAttribute('data-step');
        await button(page, 'No').click();
        await page.locator(`main:not([data-step="${step}"])`).waitFor();
      }
      expect(await page.locator('.next-steps').textContent()).toContain('Strike each note softly');
      expect(await button(page, 'Start the soft round').count()).toBe(0);
      expect(await faultsOf(app)).toEqual([]);
      await button(page, 'Keep what was seen').click();
      await page.locator('.sentence').waitFor();
      expect(await page.locator('[data-unsure]').getAttribute('data-unsure')).toBe('crack');
      await page.getByRole('link', { name: 'Listen to any note' }).waitFor();
      expect(await faultsOf(app)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
