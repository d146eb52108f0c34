// What changed since the tuner was here, the table of what happened, and the way to all cautions.
import { expect, it } from 'vitest';
import { lookKinds } from '../../src/domain/records/look-kinds';
import { panId } from '../../src/domain/records/rack-records';
import { instant } from '../../src/domain/tuning/units';
import { day, firstDay } from '../domain/rounds/round-sample';
import { sampleKnockCheck, sampleStopgap, sampleVisit } from '../storage/rack/rack-sample';
import { downloaded } from './downloaded';
import { openWithRecords } from './rack-seed';
import { panWith } from './seeded-pans';

const pan = panId('pan-1');
const on = (days: number) => instant(firstDay + days * day);
const rack = [
  ...panWith({ name: 'Heron' }, [
    { day: 0, shift: -8 },
    { day: 60, shift: 1 },
    { day: 200, shift: 2 },
    { day: 316, shift: 4, off: { 62: { fundamental: -20 } } },
  ]),
  { ...sampleVisit('visit-1', { visitedAt: on(30) }), pan },
  { ...sampleKnockCheck('check-1'), pan, at: on(320), remarks: '=1+1' },
  { ...sampleStopgap('magnet-1', 65), pan, at: on(321) },
];

it('what changed is shown since the tuner’s visit, in the result and in the history', async () => {
  const app = await openWithRecords('#/pan/pan-1/result/round-316', { records: rack });
  try {
    const { page } = app;
    await page.getByRole('button', { name: 'What changed' }).click();
    const since = page.getByLabel('Since');
    const first = since.locator('option').first();
    await expect
      .poll(() => first.textContent())
      .toMatch(/^The tuner’s visit, 9 Feb 2026: 11 Mar 2026/);
    await since.selectOption('round-60');
    await page.getByText('The whole pan rose 3 cents').waitFor();
    await page.goto(`${app.address}#/pan/pan-1/history`);
    await page.getByRole('img', { name: /^pan pitch: from .* in 3 readings$/ }).waitFor();
    const from = page.getByRole('group', { name: 'Count from' });
    await from.getByRole('button', { name: 'The tuner’s visit', pressed: true }).waitFor();
    await from.getByRole('button', { name: 'The first round' }).click();
    await page.getByRole('img', { name: /^pan pitch: from .* in 4 readings$/ }).waitFor();
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});

it('knock checks and stopgaps go out as a table without formulas', async () => {
  const app = await openWithRecords('#/pan/pan-1/history', { records: rack });
  try {
    const { page } = app;
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'What happened as a table (CSV)' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('Heron what happened.csv');
    const rows = (await downloaded(download)).toString('utf8').split('\r\n');
    expect(rows.filter((row) => row.includes(',look,,rim,yes,'))).toHaveLength(1);
    expect(rows.filter((row) => row.includes(',stopgap,F4,magnet,'))).toHaveLength(1);
    expect(rows.filter((row) => row.includes(",'=1+1,"))).toHaveLength(1);
  } finally {
    await app.close();
  }
});

it('all cautions are one tap away from where they apply', async () => {
  const app = await openWithRecords('#/pan/pan-1/tonight', { records: rack });
  try {
    const { page } = app;
    const toAll = page.getByRole('link', { name: 'All cautions on one page' });
    await toAll.click();
    await page.getByRole('heading', { name: 'Take care' }).waitFor();
    await page.goto(`${app.address}#/pan/pan-1/knock`);
    const main = page.locator('main');
    for (const look of lookKinds) {
      await page.locator(`main[data-step="${look}"]`).waitFor();
      await main.getByRole('button', { name: 'No', exact: true }).click();
    }
    await toAll.waitFor();
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
