// Whole rounds through the microphone, the screen untouched between the first tap and the result.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createStaticServer, listenOn } from '../../src/command-line/static-server.mjs';
import { notesOf } from '../../src/domain/pans/layout';
import { panPitchOf } from '../../src/domain/tuning/pan-pitch';
import { cents, hertz, type MidiNote, midiNote } from '../../src/domain/tuning/units';
import { createPracticePan, type PracticePan } from '../../src/practice-pan/practice-pan';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { distFolder } from '../build/built-files';
import { type OwnBrowser, startOwnBrowser } from './own-browser';
import { installStruckPan, takePan } from './struck-pan';

/** Two states of one invented pan: what changed between them is planted. */
const before = createPracticePan(11);
const worstThree = [
  { note: midiNote(64), fundamental: -36 },
  { note: midiNote(70), fundamental: 31 },
  { note: midiNote(79), fundamental: -26 },
];
/** The others are at most 22 cents out. */
const after = createPracticePan(12, {
  planted: new Map(
    worstThree.map(({ note, fundamental }) => [
      note,
      {
        fundamentalCents: cents(fundamental),
        octaveCents: cents(2),
        third: { kind: 'double-octave', cents: cents(1) },
      },
    ]),
  ),
});
const notes = notesOf(before.layout);

const profile = mkdtempSync(join(tmpdir(), 'ringwright-rounds-'));
const server = createStaticServer({ directory: distFolder });
let address = '';
let browser: OwnBrowser | null = null;

async function openPage(route: string): Promise<Page> {
  browser = await startOwnBrowser(profile, ['--autoplay-policy=no-user-gesture-required']);
  await browser.context.addInitScript(installStruckPan);
  const page = await browser.context.newPage();
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(`${address}${route}`);
  return page;
}

beforeAll(async () => {
  address = `http://localhost:${await listenOn(server, 0, 'localhost')}/`;
});
afterAll(async () => {
  await browser?.kill();
  server.closeAllConnections();
  server.close();
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
});

/** What a note's result on the screen says of its fundamental, cents from the band's pitch. */
const shownCents = (page: Page): Promise<Readonly<Record<string, number>>> =>
  page.evaluate(() =>
    Object.fromEntries(
      [...document.querySelectorAll<HTMLElement>('.note-row')].map((row) => [
        row.dataset['note'],
        Number(row.dataset['cents']),
      ]),
    ),
  );

const plantedPitch = (pan: PracticePan): number =>
  panPitchOf(
    notes.map((note) => ({
      note,
      cents: pan.truth(note)?.fundamentalCents ?? cents(0),
      sigmaCents: cents(0.1),
    })),
    hertz(440),
  )?.cents ?? Number.NaN;

const done = (page: Page): Promise<number> =>
  page.locator('.round').evaluate((main) => Number((main as HTMLElement).dataset['done']));

/** The notes that the round still waits for; none once the result is shown. */
const left = (page: Page): Promise<readonly number[]> =>
  page.evaluate(() => {
    const { left = '' } = document.querySelector<HTMLElement>('.round')?.dataset ?? {};
    return left.split(' ').filter(Boolean).map(Number);
  });

describe('a pan', () => {
  it('is added, heard in a guided round without a touch, through a killed browser, to its result', async () => {
    let page = await openPage('#/add-pan');
    await page.getByRole('button', { name: /take this layout/i }).click();
    await page.getByLabel('Name of the pan').fill('Heron');
    await page.getByRole('button', { name: 'Put it on the rack' }).click();
    await page.getByRole('link', { name: 'Start a round' }).click();
    await takePan(page, before);
    await page.getByRole('button', { name: 'Start and listen' }).click();
    await page.locator('[data-microphone="listening"]').waitFor();
    await page.evaluate(() => window.struckPan.follow(0.85, 12));
    const heard = await done(page);
    expect(heard).toBeGreaterThanOrEqual(12);
    const url = page.url();
    // What is shown as done has been kept before: nothing is given time to be written.
    await browser?.kill();

    page = await openPage(`#${new URL(url).hash.slice(1)}`);
    await expect.poll(() => done(page)).toBeGreaterThanOrEqual(heard);
    await takePan(page, before);
    await page.getByRole('button', { name: 'Go on listening' }).click();
    await page.locator('[data-microphone="listening"]').waitFor();
    await page.evaluate(() => window.struckPan.follow(0.85, 29));
    await page.waitForURL(/result/);
    await page.locator('.note-row').first().waitFor();

    const shown = await shownCents(page);
    expect(Object.keys(shown)).toHaveLength(29);
    for (const note of notes) {
      const truth = before.truth(note)?.fundamentalCents ?? Number.NaN;
      expect(Math.abs((shown[note] ?? Number.NaN) - truth), `note ${note}`).toBeLessThan(1);
    }
    const pitch = await page
      .locator('.pan-pitch')
      .evaluate((line) => Number((line as HTMLElement).dataset['cents']));
    expect(Math.abs(pitch - plantedPitch(before))).toBeLessThan(0.5);
  });

  it('is heard again in a quick round of 29 strikes in any order, which shows what has changed', async () => {
    const page = browser?.context.pages().at(-1);
    if (!page) throw new Error('the first test has opened no page');
    await page.goto(`${address}#/`);
    await page.getByText('Heron').click();
    await page.getByRole('link', { name: 'Start a round' }).click();
    await page.getByLabel(/Quick/).check();
    await takePan(page, after);
    await page.getByRole('button', { name: 'Start and listen' }).click();
    await page.locator('[data-microphone="listening"]').waitFor();
    await page.waitForTimeout(600);
    const order = shuffled(notes);
    await page.evaluate((some) => window.struckPan.strike(some, 1), order.slice(0, 10));
    // One strike is all that is asked for.
    expect(await page.locator('.readout-progress').textContent()).toMatch(/^1 strike(?: ·|$)/);
    await page.evaluate((some) => window.struckPan.strike(some, 1), order.slice(10));
    // The ear takes all 29 (tests/dsp/quick-round.slow.test.ts), these very sounds too. Here a busy machine may drop sound
    // between microphone and ear: then the app says so, and the strike is made again.
    // The last strikes are still being measured and kept; what has not come after this was lost.
    const all = page.locator('main.round[data-left=""]');
    await all.waitFor({ timeout: 5000 }).catch(() => undefined);
    const lost = await left(page);
    const course = await page.evaluate(() => window.struckPan.course);
    expect(lost.length, courseOf(lost, course)).toBeLessThanOrEqual(3);
    for (const note of lost) {
      expect(courseOf([note], course)).toContain('the phone lost sound, strike again');
    }
    for (let tries = 0; tries < 3 && (await left(page)).length > 0; tries++) {
      await page.evaluate((order) => window.struckPan.strike(order, 1.2), await left(page));
    }
    // A single strike ends nothing: the round waits for a tap.
    await all.waitFor();
    await page.getByRole('button', { name: 'Finish the round' }).click();
    await page.waitForURL(/result/);
    await page.locator('.note-row').first().waitFor();
    const shown = await shownCents(page);
    for (const note of notes) {
      const truth = after.truth(note)?.fundamentalCents ?? Number.NaN;
      expect(Math.abs((shown[note] ?? Number.NaN) - truth), `note ${note}`).toBeLessThan(1);
    }
    // The planted worst three are named, the worst first, among those that are surely out.
    const rowsWorstFirst = await page
      .locator('.note-row')
      .evaluateAll((all) => all.map((row) => Number((row as HTMLElement).dataset['note'])));
    expect(rowsWorstFirst.slice(0, 3)).toEqual(worstThree.map(({ note }) => note));
    const out = await page.locator('[data-quick="out"] dd').textContent();
    expect(out?.split(/\s+/).slice(0, 3)).toEqual(['E4', 'B♭4', 'G5']);

    await page.getByText('What changed').click();
    const rows = await page
      .locator('.note-row')
      .evaluateAll((all) =>
        all.map((row) => [(row as HTMLElement).dataset['note'], row.textContent]),
      );
    // The pan as a whole may have shifted between the two: the notes are set against that.
    const moves = notes.map((note) => ({
      note,
      cents:
        (after.truth(note)?.fundamentalCents ?? 0) - (before.truth(note)?.fundamentalCents ?? 0),
    }));
    const most = moves.reduce((one, other) =>
      Math.abs(other.cents) > Math.abs(one.cents) ? other : one,
    );
    expect(rows.map(([note]) => Number(note))).toContain(most.note);
  });
});

/** What the readout said in the second and a half after each of these was struck. */
function courseOf(
  notes: readonly number[],
  course: readonly { readonly at: number; readonly what: string }[],
): string {
  const within = 1500;
  return course
    .filter(({ what }) => notes.some((note) => what === `strike ${note}`))
    .map(({ at, what }) => {
      const after = course.filter((each) => each.at > at && each.at < at + within);
      return [what, ...after.map((each) => `+${Math.round(each.at - at)} ${each.what}`)].join('; ');
    })
    .join('\n');
}

function shuffled(all: readonly MidiNote[]): readonly MidiNote[] {
  const random = seededRandom(3);
  return all
    .map((note) => ({ note, at: random() }))
    .sort((one, other) => one.at - other.at)
    .map(({ note }) => note);
}
