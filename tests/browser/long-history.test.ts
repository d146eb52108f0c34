// A pan that was measured every day for decades: its history opens like any other.
import { expect, it } from 'vitest';
import type { RackRecord } from '../../src/domain/records/rack-records';
import { instant } from '../../src/domain/tuning/units';
import { sampleEdit, sampleEnd, sampleReading, sampleRound } from '../storage/rack/rack-sample';
import { openWithRecords } from './rack-seed';

const count = 10_000;
const day = 86_400_000;

const records: readonly RackRecord[] = [
  sampleEdit('edit-1', 'Heron'),
  ...Array.from({ length: count }, (_, k) => {
    const at = instant(Date.UTC(1999, 0, 1) + k * day);
    const round = { ...sampleRound(`round-${k}`), at };
    const reading = { ...sampleReading(`reading-${k}`, round, 60), at };
    return [round, { ...sampleEnd(`end-${k}`, round), at }, reading];
  }).flat(),
];

it('of 10,000 rounds the newest are listed, and more of them at a tap', async () => {
  const { page, close } = await openWithRecords('#/pan/pan-1', { records });
  await page.locator('.pan-page').waitFor();
  const begun = performance.now();
  await page.evaluate(() => {
    window.location.hash = '#/pan/pan-1/history';
  });
  await page.locator('.rows .note-row').first().waitFor();
  process.stdout.write(`history after ${Math.round(performance.now() - begun)} ms\n`);
  expect(await page.locator('.rows .note-row').count()).toBe(40);
  expect(await page.locator('*').count()).toBeLessThan(3000);
  await page.getByRole('button', { name: 'Show more: 9960 older rounds' }).click();
  await expect.poll(() => page.locator('.rows .note-row').count()).toBe(80);
  await close();
});
