// Practising with a hammer through the real screens: a flat note is brought home by the suggestions alone.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { usualProfessionalLimits } from '../../src/domain/advice/professional-limits';
import { notesOf } from '../../src/domain/pans/layout';
import { neighboursOf } from '../../src/domain/pans/neighbours';
import type { HammeredSource } from '../../src/domain/ports/practice-port';
import type { BlowFirmness, BlowPlace, BlowSide } from '../../src/domain/records/blow-places';
import { displayName } from '../../src/domain/tuning/note-names';
import { usualTolerances } from '../../src/domain/tuning/tolerances';
import type { MidiNote } from '../../src/domain/tuning/units';
import { type Judged, verdictOn } from '../../src/domain/tuning/verdict';
import { createHammeredSource } from '../../src/practice-pan/hammered-source';
import { axeFaults } from './axe-faults';
import { type OpenedApp, openApp } from './open-app';

const mostSets = 12;

const off = (pan: HammeredSource, note: MidiNote, [fundamental, octave, third]: Plant): number => {
  const truth = truthIn(pan, note);
  return Math.max(
    Math.abs(truth.fundamental.cents - fundamental),
    Math.abs((truth.octave?.centsFromOwn ?? 0) - octave),
    Math.abs((truth.third?.centsFromOwn ?? 0) - third),
  );
};
type Plant = readonly [fundamental: number, octave: number, third: number];

/**
 * Pans "one flat note" whose flat note has drawn −12, −8 and +3 cents, each within one, by the app's own way; those
 * that a patient tuner brings home without the screens. Not all are: `npm run bench:advice` prints how many. Here it is
 * the screens that are tested.
 */
async function pansToBringHome(
  count: number,
): Promise<readonly { readonly seed: number; readonly note: MidiNote }[]> {
  const found: { seed: number; note: MidiNote }[] = [];
  for (let seed = 1; found.length < count && seed < 20_000; seed++) {
    const pan = createHammeredSource(seed, { level: 'one-flat' });
    const note = notesOf(pan.layout).find(
      (each) => each <= usualTolerances.highestWithPartials && off(pan, each, [-12, -8, 3]) < 1,
    );
    if (note === undefined) continue;
    const rules = { limits: usualTolerances, professional: usualProfessionalLimits };
    const { tuning } = await pan.patientWork([note], rules, async () => {});
    const after = tuning.find((each) => each.note === note);
    if (after && verdictOn(after).kind === 'aligned') found.push({ seed, note });
  }
  return found;
}

const truthIn = (source: HammeredSource, note: MidiNote): Judged => {
  const truth = source.tuning().find((each) => each.note === note);
  if (!truth) throw new Error('the note is missing');
  return truth;
};
const pans = await pansToBringHome(2);

/** Opens the levels with a browser whose next random number is `seed`. */
async function openPractice(seed: number, width = 360): Promise<OpenedApp> {
  const app = await openApp('#/practice-bench', {
    viewport: { width, height: 740 },
    bypassPolicy: true,
  });
  await app.context.addInitScript((number) => {
    const original = crypto.getRandomValues.bind(crypto);
    crypto.getRandomValues = <T extends ArrayBufferView | null>(array: T): T => {
      if (!(array instanceof Uint32Array) || array.length !== 1) return original(array as never);
      array[0] = number;
      return array;
    };
  }, seed);
  await app.page.reload();
  await app.page.locator('[data-level="one-flat"]').click();
  return app;
}

const strikeButton = (page: Page, note: MidiNote) =>
  page.getByRole('button', { name: `Strike ${displayName(note)}`, exact: true });

async function putOnBench(page: Page, note: MidiNote): Promise<void> {
  await strikeButton(page, note).first().click();
  await page.getByRole('button', { name: `Work on ${displayName(note)}` }).click();
  await page.locator(`main.bench[data-note="${note}"]`).waitFor();
}

/** Strikes until the reading has settled, as a player would; more than six strikes are too many. */
async function read(page: Page, note: MidiNote): Promise<void> {
  for (let strike = 1; strike <= 6; strike++) {
    await strikeButton(page, note).click();
    await page.waitForFunction(
      (count) => Number(document.querySelector('#readout')?.getAttribute('data-strikes')) >= count,
      strike,
    );
    if (strike >= 3 && (await page.locator('#readout[data-state="settled"]').count()) > 0) return;
  }
  throw new Error('the reading does not settle');
}

interface Shown {
  readonly kind: string | undefined;
  readonly place: BlowPlace;
  readonly side: BlowSide;
  readonly firmness: BlowFirmness;
  readonly count: number;
}

const advice = async (page: Page): Promise<Shown> =>
  page.locator('section.advice').evaluate((element) => {
    const { advice: kind, place, side, firmness, count } = (element as HTMLElement).dataset;
    return { kind, place, side, firmness, count: Number(count) } as never;
  });

/** Targets that are too small for a finger, and what sticks out at the side. */
const tooSmallOrCut = (page: Page) =>
  page.evaluate(() => ({
    small: [...document.querySelectorAll('a, button, summary, .choice')]
      .filter((element) => element.checkVisibility())
      .filter((element) => element.getBoundingClientRect().height < 44)
      .map((element) => element.textContent),
    sideways: document.documentElement.scrollWidth - window.innerWidth,
  }));

describe('a flat note on the practice pan', () => {
  it.each(pans)(
    'is brought within tolerance by the suggestions alone, no neighbour out (seed $seed, note $note)',
    async ({ seed, note }) => {
      const app = await openPractice(seed);
      const { page } = app;
      // The same metal, hammered the same way: what is true on the other side of the screen.
      const mirror = createHammeredSource(seed, { level: 'one-flat' });
      try {
        await putOnBench(page, note);
        await read(page, note);
        expect(await page.locator('section.advice').count()).toBe(0);
        await page.locator('details.consent summary').click();
        await page.locator('.consent-body button').click();
        let sets = 0;
        for (let shown = await advice(page); shown.kind === 'blows'; shown = await advice(page)) {
          expect(++sets).toBeLessThanOrEqual(mostSets);
          await page.locator('[data-suggested]').click();
          await page.locator('main[data-awaits="true"]').waitFor();
          const { place, side, firmness, count } = shown;
          mirror.hammer(note, { place, side }, firmness, count);
          await read(page, note);
          const heard = await page.locator('#readout').getAttribute('data-fundamental-cents');
          const { cents } = truthIn(mirror, note).fundamental;
          expect(Math.abs(Number(heard) - cents), `heard ${heard}, is ${cents}`).toBeLessThan(1);
        }
        expect(sets).toBeGreaterThan(0);
        const end = await page.locator('section.advice').getAttribute('data-why');
        expect(verdictOn(truthIn(mirror, note)).kind, `told to stop: ${end}`).toBe('aligned');
        for (const neighbour of neighboursOf(mirror.layout, note)) {
          expect(['aligned', 'in-tune']).toContain(verdictOn(truthIn(mirror, neighbour.note)).kind);
        }
        await page.getByRole('button', { name: 'Back to the pan' }).click();
        await page.getByRole('button', { name: 'Finish and compare' }).click();
        await page.locator('main[data-patient="true"]').waitFor();
        expect(await page.locator('main').getAttribute('data-gained')).toBe('1');
        expect(await page.locator('main').getAttribute('data-spoiled')).toBe('0');
        expect(app.problems).toEqual([]);
      } finally {
        await app.close();
      }
    },
  );

  it('was found: two pans drew it by themselves', () => {
    expect(pans).toHaveLength(2);
  });
});

describe('the practice bench', () => {
  const [first] = pans;
  if (!first) throw new Error('no pan');
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openPractice(first.seed, 320);
  });
  afterAll(async () => {
    await app.close();
  });

  it('moves the note with each tap, one place a set, and suggests nothing to the untrained', async () => {
    const { page } = app;
    const { note } = first;
    await putOnBench(page, note);
    await read(page, note);
    const before = Number(await page.locator('#readout').getAttribute('data-fundamental-cents'));
    const mirror = createHammeredSource(first.seed, { level: 'one-flat' });
    const border = page.locator('button[data-place="border"]');
    for (let blow = 1; blow <= 3; blow++) {
      await border.click();
      await page.locator(`main[data-blows="${blow}"]`).waitFor();
      mirror.hammer(note, { place: 'border', side: 'above' }, 'light', 1);
    }
    await page.locator('button[data-place="middle"]').click();
    await page.getByText('A set of blows falls at one place.').waitFor();
    expect(await page.locator('main').getAttribute('data-blows')).toBe('3');
    await read(page, note);
    const after = Number(await page.locator('#readout').getAttribute('data-fundamental-cents'));
    expect(after).toBeGreaterThan(before);
    expect(Math.abs(after - truthIn(mirror, note).fundamental.cents)).toBeLessThan(1);
    expect(await page.locator('section.advice, [data-suggested]').count()).toBe(0);
  });

  it('can be used by all at 320 px, and so can its beginning and its end', async () => {
    const { page } = app;
    const check = async (name: string) => {
      expect(await axeFaults(page), name).toEqual([]);
      expect(await tooSmallOrCut(page), name).toEqual({ small: [], sideways: 0 });
    };
    await check('bench');
    await page.getByRole('button', { name: 'Back to the pan' }).click();
    await check('pan');
    await page.getByRole('button', { name: 'Finish and compare' }).click();
    await page.locator('main[data-patient="true"]').waitFor();
    await check('end');
    await page.getByRole('button', { name: 'Practise again' }).click();
    await check('levels');
    expect(app.problems).toEqual([]);
  });
});
