// Looking inside a strike, from the practice pan and from a sound file: values, sounds, and for everybody.
import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { midiNote } from '../../src/domain/tuning/units';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { floatWav } from '../synthetic-sounds/float-wav';
import { axeFaults } from './axe-faults';
import { layOut } from './lay-out';
import { openApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

const parts = ['fundamental', 'octave', 'third'] as const;

async function practiceStrike(page: Page): Promise<Record<(typeof parts)[number], string>> {
  await page.locator('.note').nth(12).click();
  const readout = page.locator('#readout');
  await expect.poll(() => readout.getAttribute('data-strikes')).not.toBe('0');
  // The link comes with the settled word on the strike.
  await page.getByRole('link', { name: 'Look inside' }).waitFor();
  const value = (part: string) => readout.getAttribute(`data-${part}-cents`);
  const [fundamental, octave, third] = await Promise.all(parts.map(value));
  return { fundamental: fundamental ?? '', octave: octave ?? '', third: third ?? '' };
}

/** Every sound that the page starts is written down: how long, s, and its louder half against its softer one. */
function recordSounds(): void {
  const started: number[] = [];
  Object.assign(window, { started });
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, ...rest) {
    started.push(this.buffer?.duration ?? 0);
    return start.apply(this, rest as []);
  };
}
const startedIn = (page: Page): Promise<readonly number[]> =>
  page.evaluate(() => (window as unknown as { started: number[] }).started);

describe('looking inside a strike', () => {
  it('from the practice pan shows the values of the reading, plays each part, and leads back', async () => {
    const app = await openApp('#/practice', { beforeApp: recordSounds });
    try {
      const { page } = app;
      const seen = await practiceStrike(page);
      await page.getByRole('link', { name: 'Look inside' }).click();
      await page.locator('.inside .part').first().waitFor();
      for (const part of parts) {
        if (seen[part] === '') continue;
        const shown = await page.locator(`[data-part="${part}"]`).getAttribute('data-cents');
        expect(shown, part).toBe(seen[part]);
        const outline = await page.locator(`[data-part="${part}"] .course`).getAttribute('points');
        expect(outline?.split(' ').length ?? 0, part).toBeGreaterThan(20);
      }
      const before = (await startedIn(page)).length;
      await page.getByRole('button', { name: 'octave: Both', exact: true }).click();
      await expect.poll(() => page.locator('.moving-oval').getAttribute('data-lit')).toBe('octave');
      await expect.poll(() => page.locator('.moving-oval').getAttribute('data-lit')).toBe('');
      await page.getByRole('button', { name: 'A quarter' }).click();
      await page.getByRole('button', { name: 'octave: Hear it', exact: true }).click();
      await expect.poll(async () => (await startedIn(page)).length).toBe(before + 2);
      const [first = 0, second = 0] = (await startedIn(page)).slice(before);
      expect(second / first).toBeCloseTo(4, 1);
      await page.getByRole('button', { name: 'Back to the strike' }).click();
      await page.locator('.pan-drawing').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('says what to do first when nothing was struck', async () => {
    const app = await openApp('#/inside');
    try {
      await app.page.getByText('Nothing to look into yet').waitFor();
      await app.page.getByRole('link', { name: 'Listen' }).click();
      await app.page.locator('#readout').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it.each(['light', 'dark'] as const)('is there for everybody (%s)', async (theme) => {
    const app = await openApp('#/practice', {
      theme,
      bypassPolicy: true,
      viewport: { width: 360, height: 740 },
    });
    try {
      const { page } = app;
      await page.emulateMedia({ reducedMotion: 'reduce' });
      await practiceStrike(page);
      await page.getByRole('link', { name: 'Look inside' }).click();
      await page.locator('.inside .part').first().waitFor();
      const folder = process.env['PICTURES'];
      if (folder) {
        mkdirSync(folder, { recursive: true });
        await page.screenshot({ path: `${folder}/inside-${theme}.png` });
        await page.screenshot({ path: `${folder}/inside-${theme}-whole.png`, fullPage: true });
      }
      expect(await axeFaults(page)).toEqual([]);
      for (const [width, size] of [
        [320, ''],
        [360, '200%'],
        [320, '200%'],
      ] as const) {
        await layOut(page, width, 740, size);
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        );
        expect(over, `${width} ${size}`).toBeLessThanOrEqual(0);
      }
      await layOut(page, 360, 740, '');
      const small = await page
        .locator('.inside .sounds button')
        .evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 60).length);
      expect(small).toBe(0);
      await page.emulateMedia({ forcedColors: 'active' });
      if (folder) await page.screenshot({ path: `${folder}/inside-${theme}-forced.png` });
      const line = await page
        .locator('.part-course .course')
        .first()
        .evaluate((one) => getComputedStyle(one).fill);
      expect(line).not.toBe('none');
      await page.getByRole('button', { name: 'octave: Hear it', exact: true }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => page.locator('.moving-oval').getAttribute('data-lit')).toBe('octave');
    } finally {
      await app.close();
    }
  });
});

/** What oscillators the page starts: the pitch of each, Hz. */
function recordTones(): void {
  const tones: number[] = [];
  Object.assign(window, { tones });
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (this: OscillatorNode, ...rest) {
    tones.push(this.frequency.value);
    return start.apply(this, rest as []);
  };
}

it("a note's page holds its target tone, and that of its octave, until the next tap", async () => {
  const app = await openWithRecords(
    '#/pan/pan-1/note/62',
    { records: panWith({ name: 'Heron' }, [{}]) },
    { beforeApp: recordTones },
  );
  try {
    const { page } = app;
    await page.getByRole('button', { name: 'D4', exact: true }).click();
    await page.getByRole('button', { name: 'D4', exact: true, pressed: true }).waitFor();
    await page.getByRole('button', { name: 'octave', exact: true }).click();
    await page.getByRole('button', { name: 'octave', exact: true, pressed: true }).click();
    await page.getByRole('button', { name: 'octave', exact: true, pressed: false }).waitFor();
    const tones = await page.evaluate(() => (window as unknown as { tones: number[] }).tones);
    // D4 and D5 at A4 = 440 Hz (ISO 16:1975).
    expect(tones.map((hz) => hz.toFixed(2))).toEqual(['293.66', '587.33']);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});

it('a sound file leads inside its strike, with the values that were read, and back to Listen', async () => {
  const app = await openApp('#/');
  try {
    const { page } = app;
    const pan = createPracticePan(17);
    const strike = pan.strike(midiNote(62), 0.6, 48_000);
    const sound = new Float32Array(14_400 + strike.length + 24_000);
    sound.set(strike, 14_400);
    await page.locator('main.rack input[type="file"]').setInputFiles({
      name: 'strike.wav',
      mimeType: 'audio/wav',
      buffer: Buffer.from(floatWav(sound, 48_000)),
    });
    await page.getByRole('link', { name: 'Look inside' }).waitFor();
    const seen = await page.locator('#readout').getAttribute('data-fundamental-cents');
    await page.getByRole('link', { name: 'Look inside' }).click();
    const part = page.locator('[data-part="fundamental"]');
    await part.waitFor();
    expect(await part.getAttribute('data-cents')).toBe(seen);
    await page.getByRole('button', { name: 'Back to the strike' }).click();
    await page.locator('#readout').waitFor();
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});

it('a round leads inside its strike and back to the same round, which listens on', async () => {
  const app = await openWithRecords(
    '#/pan/pan-1/round/round-0',
    { records: panWith({ name: 'Heron' }, [{ only: [60], isOpen: true }]) },
    { beforeApp: standInEar },
  );
  try {
    const { page } = app;
    await page.locator('main.round').waitFor();
    await page.getByRole('button', { name: 'Go on listening', exact: true }).click();
    await untilListening(page);
    await tellStrikes(page, 1, { note: 74 });
    await page.getByRole('link', { name: 'Look inside' }).click();
    await page.locator('main.inside').waitFor();
    await page.getByRole('button', { name: 'Back, and listen on' }).click();
    await page.locator('main.round').waitFor();
    await untilListening(page);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
