// The bench for hands that hold a hammer: everything that is needed is on one screen, and nothing needs a touch.
import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Strike } from '../../src/domain/measurement/strike';
import { defaultSettings } from '../../src/domain/settings/settings';
import { hertz, seconds } from '../../src/domain/tuning/units';
import { strikeSample } from '../domain/reading/strike-sample';
import { axeFaults } from './axe-faults';
import { layOut, untilDrawn } from './lay-out';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';
import { sayHeard, standInEar, untilListening } from './stand-in-ear';

/** Where screenshots go, for those who want to see them. */
const pictures = process.env['BENCH_PICTURES'];
const settings = { ...defaultSettings, isTrained: true };
/** E♭4: a name with a sign, many neighbours, and a double octave. */
const note = 63;

interface Values {
  readonly fundamental: number;
  readonly octave: number;
  readonly third: number;
}

let lastEvent = 0;

/** A strike as the ear would tell it: cents of the fundamental against its target, the others against the own fundamental. */
function strikeOf(struck: number, { fundamental, octave, third }: Values): Strike {
  const sketch = { note: struck, fundamental, octave, third, event: ++lastEvent };
  const strike = strikeSample(sketch);
  const own = 440 * 2 ** ((struck - 69) / 12 + fundamental / 1200);
  const line = (times: number, off: number) => hertz(times * own * 2 ** (off / 1200));
  if (!strike.octave || !strike.third) throw new Error('the strike has all partials');
  return {
    ...strike,
    fundamental: { ...strike.fundamental, hz: line(1, 0) },
    octave: { ...strike.octave, hz: line(2, octave) },
    third: { ...strike.third, kind: 'double-octave', hz: line(4, third) },
  };
}

const strike = (page: Page, values: Values, count = 3): Promise<void> =>
  sayHeard(
    page,
    Array.from({ length: count }, () => strikeOf(note, values)),
  );

const knock = (page: Page, count: number): Promise<void> =>
  sayHeard(
    page,
    Array.from({ length: count }, () => {
      const event = ++lastEvent;
      return { kind: 'knock', event, at: seconds(event) } as const;
    }),
  );

const sizes = [
  { width: 360, height: 640 },
  { width: 640, height: 360 },
] as const;

const openBench = async (viewport: (typeof sizes)[number], theme: 'light' | 'dark' = 'dark') => {
  const app = await openWithRecords(
    `#/pan/pan-1/bench/${note}`,
    { records: panWith({ name: 'Heron' }, [{}]), settings },
    { beforeApp: standInEar, bypassPolicy: true, viewport, theme },
  );
  await app.page.locator('main.bench').waitFor();
  return app;
};

let shot = 0;
async function picture(page: Page, name: string): Promise<void> {
  if (!pictures) return;
  mkdirSync(pictures, { recursive: true });
  const { width, height } = page.viewportSize() ?? { width: 0, height: 0 };
  const number = String(shot++).padStart(2, '0');
  await page.screenshot({ path: `${pictures}/${number}-${width}x${height}-${name}.png` });
}

/** What must be in sight, with its place on the screen and what of it is cut off or covered. */
const inSight = (page: Page, wanted: readonly string[]) =>
  page.evaluate((selectors) => {
    const faults: string[] = [];
    const bar = document.querySelector('.actions')?.getBoundingClientRect();
    for (const selector of selectors) {
      const element = document.querySelector(selector);
      if (!element?.checkVisibility()) {
        faults.push(`${selector} is not there`);
        continue;
      }
      const { left, right, top, bottom } = element.getBoundingClientRect();
      const place = `${selector} at ${Math.round(left)}–${Math.round(right)} × ${Math.round(top)}–${Math.round(bottom)}`;
      if (left < 0 || right > innerWidth || top < 0 || bottom > innerHeight) {
        faults.push(`${place} leaves the screen`);
      }
      if (element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0) {
        faults.push(`${place} is cut`);
      }
      if (!bar || element.closest('.actions')) continue;
      const isUnder = right > bar.left + 1 && left < bar.right - 1 && bottom > bar.top + 1;
      if (isUnder && top < bar.bottom) faults.push(`${place} lies under the bar`);
    }
    if (document.documentElement.scrollWidth > innerWidth) faults.push('the page is too wide');
    if (scrollY !== 0) faults.push('the page was scrolled');
    const status = document.querySelector('.hands-status')?.textContent;
    return faults.map((fault) => `${fault}; the status says "${status}"`);
  }, wanted);

/** Height of the capitals of the big lines, px: of the letters that are drawn, not of their line. */
const capitals = (page: Page): Promise<readonly number[]> =>
  page.evaluate(() => {
    const canvas = document.createElement('canvas').getContext('2d');
    if (!canvas) throw new Error('nothing can be measured');
    return [...document.querySelectorAll('.hands .fit-line')].map((line) => {
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(line);
      canvas.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      return canvas.measureText('H').actualBoundingBoxAscent;
    });
  });

const always = [
  '.hands .note-name',
  '.hands .message',
  '.hands-lines',
  '.actions .button, .actions button',
];

describe.each(sizes)('the bench at $width × $height', (viewport) => {
  it('shows a whole loop of strikes, blows and strikes without a scroll and without a touch', async () => {
    const app = await openBench(viewport);
    const { page } = app;
    const see = async (name: string, ...more: readonly string[]) => {
      await untilDrawn(page);
      await picture(page, name);
      expect(await inSight(page, [...always, '.hands-caution', ...more]), name).toEqual([]);
    };
    const big = async () => {
      const sizes = await capitals(page);
      process.stdout.write(
        `capitals at ${viewport.width} × ${viewport.height}: ${sizes.map((size) => size.toFixed(1)).join(' and ')} px\n`,
      );
      expect(sizes.length).toBe(2);
      for (const size of sizes) expect(size).toBeGreaterThanOrEqual(96);
    };
    try {
      await see('opened', '.hands-status', '.cover');
      // The one touch before the hammer is taken up.
      await page.getByRole('button', { name: 'Listen', exact: true }).click();
      await untilListening(page);
      await page.evaluate(() => {
        for (const kind of ['pointerdown', 'scroll', 'keydown']) {
          window.addEventListener(
            kind,
            () => document.body.setAttribute('data-touched', kind),
            true,
          );
        }
      });
      await strike(page, { fundamental: 2, octave: -12, third: -21 });
      await page.locator('.next-step[data-step="blows"]').waitFor();
      expect(await page.locator('.hands').textContent()).toMatch(/from above/);
      await see('first reading', '.next-step', '.next-step .place-picture', '.step-place');
      await big();
      const before = await page.locator('.step-blows').textContent();
      await knock(page, 2);
      await page.locator('main.bench[data-blows="2"]').waitFor();
      // What was suggested, and the way to log it so, stay in sight while the hammer falls.
      expect(await page.locator('.step-blows').textContent()).toBe(before);
      await page.locator('.actions').getByRole('button', { name: 'As suggested' }).waitFor();
      expect(await page.locator('.hands-status').textContent()).toMatch(/\b2\b|blows heard/i);
      await see('blows', '.next-step', '.step-place', '.hands-status');
      await big();
      await strike(page, { fundamental: 3, octave: -5, third: -20 });
      await page
        .locator('main.bench[data-awaits="false"] #readout[data-state="settled"]')
        .waitFor();
      await page.locator('.next-step').waitFor();
      expect(await page.locator('.hands-lines').textContent()).toContain('was −12');
      await see('second reading', '.next-step', '.hands-lines .was');
      await big();
      expect(await page.locator('body').getAttribute('data-touched')).toBeNull();
      expect(await axeFaults(page)).toEqual([]);
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('keeps the verdict when it is told to stop, and cuts nothing in a narrower window or larger text', async () => {
    const app = await openBench(viewport, 'light');
    const { page } = app;
    try {
      await page.getByRole('button', { name: 'Listen', exact: true }).click();
      await untilListening(page);
      await strike(page, { fundamental: -14, octave: -12, third: -21 });
      await page.locator('.next-step').waitFor();
      await page.getByRole('button', { name: 'Stop', exact: true }).click();
      await page.getByRole('button', { name: 'Listen', exact: true }).waitFor();
      await untilDrawn(page);
      await picture(page, 'stopped');
      expect(await page.locator('#readout').getAttribute('data-verdict')).toBe('flat');
      expect(await inSight(page, [...always, '.next-step', '.hands-status'])).toEqual([]);
      for (const [width, size] of [
        [320, ''],
        [viewport.width, '200%'],
        [320, '200%'],
      ] as const) {
        await layOut(page, width, viewport.height, size);
        await picture(page, `${width} at ${size}`);
        expect(await cutOrCovered(page), `${width} px, text ${size}`).toEqual([]);
      }
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

/** Of what stands in the hands' part: what sticks out at the side, what is cut, and what lies over something else. */
const cutOrCovered = (page: Page) =>
  page.evaluate(() => {
    const parts = [
      ...document.querySelectorAll(
        '.hands .readout-head, .hands .message, .hands tr, .next-step p, .hands-status, .hands-caution',
      ),
    ].filter((part) => part.checkVisibility());
    const boxes = parts.map((part) => part.getBoundingClientRect());
    const name = (k: number) => parts[k]?.className || parts[k]?.textContent;
    return boxes.flatMap((box, k) => [
      ...(box.left < 0 || box.right > innerWidth ? [`${name(k)} leaves the screen`] : []),
      ...((parts[k]?.scrollWidth ?? 0) > (parts[k]?.clientWidth ?? 0) + 1 &&
      !parts[k]?.matches('tr')
        ? [`${name(k)} is cut`]
        : []),
      ...boxes.flatMap((other, m) =>
        m > k &&
        box.left < other.right - 1 &&
        other.left < box.right - 1 &&
        box.top < other.bottom - 1 &&
        other.top < box.bottom - 1
          ? [`${name(k)} lies over ${name(m)}`]
          : [],
      ),
    ]);
  });

describe('the microphone of the bench', () => {
  it('comes on by itself on the next note, says so, and not after it was turned off', async () => {
    const app = await openBench(sizes[0]);
    const { page } = app;
    const bench = async (next: number) => {
      await page.evaluate((hash) => {
        window.location.hash = hash;
      }, `#/pan/pan-1/bench/${next}`);
      await page.locator(`main.bench[data-note="${next}"]`).waitFor();
    };
    try {
      await page.getByRole('button', { name: 'Listen', exact: true }).click();
      await untilListening(page);
      await strike(page, { fundamental: -14, octave: -12, third: -21 });
      await bench(65);
      await untilListening(page);
      await page.locator('.hands-status', { hasText: 'came on by itself' }).waitFor();
      await untilDrawn(page);
      await picture(page, 'came on');
      await sayHeard(page, [strikeOf(65, { fundamental: 1, octave: 0, third: 0 })]);
      await page.locator('#readout[data-strikes="1"]').waitFor();
      await page.locator('.hands-status', { hasText: 'came on' }).waitFor({ state: 'detached' });
      await page.getByRole('button', { name: 'Stop', exact: true }).click();
      await page.getByRole('button', { name: 'Listen', exact: true }).waitFor();
      await bench(note);
      await page.getByText('The microphone is off.').first().waitFor();
      await page.getByRole('button', { name: 'Listen', exact: true }).waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});

describe('the bench by ear', () => {
  it('leads inside the newest strike and back to the same bench, which listens on', async () => {
    const app = await openBench(sizes[0]);
    const { page } = app;
    const look = page.getByRole('link', { name: 'Look inside' });
    try {
      await page.getByRole('button', { name: 'Listen', exact: true }).click();
      await untilListening(page);
      expect(await look.count()).toBe(0);
      await strike(page, { fundamental: -14, octave: -12, third: -21 });
      await look.waitFor();
      // Below what is in sight without a scroll: the hands keep their screen.
      expect((await look.boundingBox())?.y).toBeGreaterThan(sizes[0].height);
      await look.click();
      await page.locator('main.inside').waitFor();
      await page.getByRole('button', { name: 'Back, and listen on' }).click();
      await page.locator(`main.bench[data-note="${note}"]`).waitFor();
      await untilListening(page);
      // What was measured is still there, and what is struck now is for this bench.
      await page.locator('#readout[data-strikes="3"]').waitFor();
      await page.waitForTimeout(1500);
      await strike(page, { fundamental: -13, octave: -12, third: -21 }, 1);
      await page.locator('#readout[data-strikes="4"]').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
