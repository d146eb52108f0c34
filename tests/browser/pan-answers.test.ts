// What blows did on a pan: a page that the tuner gets on paper or as a file.
import { expect, it } from 'vitest';
import { recordId } from '../../src/domain/records/rack-records';
import { instant, midiNote } from '../../src/domain/tuning/units';
import { readingSample } from '../domain/rounds/round-sample';
import { sampleBlows } from '../storage/rack/rack-sample';
import { axeFaults } from './axe-faults';
import { downloaded } from './downloaded';
import { layOut } from './lay-out';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

const pictures = process.env['BENCH_PICTURES'];

const sets = [4, 7].flatMap((moved, k) => {
  const [before, after] = [0, moved].map((fundamental, later) =>
    readingSample(null, { note: 62, fundamental, octave: 0, third: 0 }, 2 * k + later),
  );
  if (!before || !after) throw new Error('no readings');
  const id = recordId(`blows-${k}`);
  const logged = { place: 'long-ends', side: 'above', firmness: 'light' } as const;
  const at = instant(before.at + 1);
  const note = midiNote(62);
  const blows = {
    ...sampleBlows(`blows-${k}`, 62),
    id,
    pan: before.pan,
    at,
    note,
    count: 3,
    logged,
  };
  return [before, after, { ...blows, before: before.id, after: after.id }];
});

it('is told from the page of the pan in one tap, fits a phone, prints, and goes out as a file', async () => {
  const app = await openWithRecords(
    '#/pan/pan-1',
    { records: [...panWith({ name: 'Heron' }, [{}]), ...sets] },
    { bypassPolicy: true, theme: 'light' },
  );
  const { page } = app;
  try {
    await page.getByRole('link', { name: 'What blows did here' }).click();
    const row = page.locator('.answers-page tr[data-place="long-ends"]');
    await row.waitFor();
    expect(await row.textContent()).toContain('+6 (+4 to +7)');
    expect(await row.textContent()).toContain('2 sets');
    expect(await row.textContent()).toContain('D4');
    expect(await axeFaults(page)).toEqual([]);
    for (const [width, size] of [
      [360, ''],
      [320, '200%'],
    ] as const) {
      await layOut(page, width, 640, size);
      if (pictures) {
        await page.screenshot({ path: `${pictures}/answers-${width}.png`, fullPage: true });
      }
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(wide, `${width} px`).toBeLessThanOrEqual(0);
    }
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save or send the page' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/Heron.*\.html$/);
    const text = (await downloaded(download)).toString('utf8');
    expect(text).toContain('+6 (+4 to +7)');
    expect(text).not.toContain('<script');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.answers-page').isVisible()).toBe(true);
    expect(await page.locator('.answers > button').first().isVisible()).toBe(false);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
