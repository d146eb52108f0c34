// The first minute, words that not everybody knows, and the long page of the settings.
import { describe, expect, it } from 'vitest';
import { axeFaults } from './axe-faults';
import { button, faultsOf } from './knock-steps';
import { layOut } from './lay-out';
import { openApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

const phone = { width: 360, height: 740 } as const;

describe('the first minute', () => {
  it('says in one line what the app does, with listening and the practice pan in sight', async () => {
    const app = await openApp('#/', { bypassPolicy: true, viewport: phone });
    const { page } = app;
    try {
      const line = 'Strike a note. The phone says which part of it is flat or sharp.';
      for (const seen of [
        page.getByText(line),
        page.getByRole('link', { name: 'Listen' }),
        page.getByRole('link', { name: 'Practice pan' }),
      ]) {
        await seen.waitFor();
        const box = await seen.boundingBox();
        expect((box?.y ?? 999) + (box?.height ?? 0)).toBeLessThan(phone.height);
      }
      expect(await faultsOf(app)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('names the steps on both kinds of phones where the microphone was denied', async () => {
    const app = await openApp('#/listen', { permission: 'denied', viewport: phone });
    const { page } = app;
    try {
      await button(page, 'Listen').click();
      await page.locator('[data-microphone="denied"]').waitFor();
      await page.getByText('On an iPhone').click();
      await page.getByText('Website Settings, Microphone, Allow').waitFor();
      await page.getByText('On an Android phone').click();
      await page.getByText('then Permissions').waitFor();
    } finally {
      await app.close();
    }
  });
});

describe('a word that not everybody knows', () => {
  it('gets one line when it is tapped', async () => {
    const records = panWith({}, [{ day: 0 }, { day: 200, shift: 2 }]);
    const app = await openWithRecords('#/pan/pan-1/history', { records }, { viewport: phone });
    const { page } = app;
    try {
      const line = page.getByText('How far the notes lie from the pan as a whole, on average.');
      await page.getByText('What is “unevenness”?').waitFor();
      expect(await line.isVisible()).toBe(false);
      await page.getByText('What is “unevenness”?').click();
      expect(await line.isVisible()).toBe(true);
    } finally {
      await app.close();
    }
  });
});

describe('the settings of somebody who hammers', () => {
  it('fit at 320 and 360 px and 200 %, and have a list of their parts', async () => {
    const app = await openApp('#/bench/74', { bypassPolicy: true, viewport: phone });
    const { page } = app;
    try {
      await page.getByText('Suggestions', { exact: true }).click();
      await button(page, 'I have been shown how by a tuner').click();
      await page.goto(`${app.address}#/settings`);
      await page.getByText('When a note is for a professional').waitFor();
      for (const [width, size] of [
        [360, '100%'],
        [320, '100%'],
        [360, '200%'],
      ] as const) {
        await layOut(page, width, 740, size);
        const outside = await page.evaluate(() =>
          [...document.querySelectorAll('main *')]
            .filter((each) => each.checkVisibility())
            .filter((each) => each.getBoundingClientRect().right > window.innerWidth + 0.5)
            .map((each) => `${each.tagName} ${each.className}: ${each.textContent?.slice(0, 40)}`),
        );
        expect(outside, `${width} px at ${size}`).toEqual([]);
        // A tick as wide as a field would push its label out.
        const ticks = await page.evaluate(() =>
          [...document.querySelectorAll('input[type="checkbox"]')].map(
            (tick) => tick.getBoundingClientRect().width / window.innerWidth,
          ),
        );
        expect(Math.max(...ticks), `ticks at ${width} px`).toBeLessThan(0.16);
      }
      await layOut(page, 360, 740);
      await page.getByText('Parts of this page').click();
      await button(page, 'When a note is for a professional').click();
      const heading = page.getByRole('heading', { name: 'When a note is for a professional' });
      await expect.poll(async () => (await heading.boundingBox())?.y ?? -1).toBeLessThan(300);
      expect(await heading.evaluate((each) => each === document.activeElement)).toBe(true);
      expect(await axeFaults(page)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
