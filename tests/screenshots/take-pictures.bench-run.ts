// The pictures of README, taken from the build at 360 × 740: `npm run pictures`. The pans in them are invented.
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openApp } from '../browser/open-app';
import { openWithRecords } from '../browser/rack-seed';
import { asPan, panWith } from '../browser/seeded-pans';
import { sixStrikes } from '../browser/six-strikes';

const viewport = { width: 360, height: 740 };

/** D4 has dropped, F♯5's octave is off, and C4 is dead. */
const heron = panWith(
  { owner: 'Northside' },
  [
    { day: 0 },
    {
      day: 316,
      shift: 2,
      off: {
        62: { fundamental: -26, octave: 2 },
        74: { fundamental: -9, octave: 1 },
        78: { fundamental: 1, octave: 18 },
      },
    },
  ],
  { 60: 'dead' },
);
const wren = asPan(
  'wren',
  panWith({ name: 'Wren' }, [{ day: 317, off: { 65: { fundamental: 8 } } }]),
);
const records = [...heron, ...wren];

async function keep(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  const path = join(import.meta.dirname, `${name}.png`);
  const picture = await page.screenshot({ path, scale: 'css' });
  expect(picture.length).toBeGreaterThan(5_000);
}

it.each(['dark', 'light'] as const)('the readout, %s', { timeout: 120_000 }, async (theme) => {
  const app = await openApp('#/', { sound: sixStrikes(), theme, viewport });
  try {
    await app.page.getByRole('link', { name: 'Listen' }).click();
    await app.page.locator('#readout[data-state="settled"]').waitFor({ timeout: 60_000 });
    await keep(app.page, `readout-${theme}`);
  } finally {
    await app.close();
  }
});

it.each([
  ['rack', '#/', '[data-pan="wren"]'],
  ['pan', '#/pan/pan-1', '.pan-page'],
  ['practice', '#/practice', 'main svg'],
] as const)('%s', { timeout: 120_000 }, async (name, route, shown) => {
  const app = await openWithRecords(route, { records }, { viewport });
  try {
    await app.page.locator(shown).first().waitFor();
    await keep(app.page, name);
  } finally {
    await app.close();
  }
});
