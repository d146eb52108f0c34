// Every screen is two taps away from the rack at most, and none of them is a dead end when there is nothing to show on it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, routeOf } from '../../src/ui/frame/route';
import { rackWords } from '../../src/ui/words/rack-words';
import { type OpenedApp, openApp } from './open-app';
import { openWithRecords } from './rack-seed';
import { asPan, panWith } from './seeded-pans';
import { standInEar, tellStrikes, untilListening } from './stand-in-ear';

/** What a screen says when there is nothing to show on it, and the control that leads on. */
interface NextStep {
  /** Which screen: without its beginning "#/pan/heron", if `of` is 'pan'. */
  readonly at: string;
  /** With a rack without pans, or with a pan that nobody has measured. */
  readonly of: 'no pans' | 'pan';
  readonly says: RegExp;
  readonly control: RegExp;
}

const nextSteps: Readonly<Record<string, NextStep>> = {
  rack: { at: '', of: 'no pans', says: /Add one, or just listen/, control: /Add a pan/ },
  listen: { at: 'listen', of: 'no pans', says: /microphone is off/, control: /^Listen$/ },
  inside: { at: 'inside', of: 'no pans', says: /strike a note first/, control: /^Listen$/ },
  practice: { at: 'practice', of: 'no pans', says: /strike any note/, control: /Strike D4/ },
  'practice-bench': {
    at: 'practice-bench',
    of: 'no pans',
    says: /Choose a pan/,
    control: /One flat note/,
  },
  several: {
    at: 'several',
    of: 'no pans',
    says: /No pans are kept here yet/,
    control: /Add a pan/,
  },
  settings: { at: 'settings', of: 'no pans', says: /Band pitch/, control: /Band pitch/ },
  'add-pan': { at: 'add-pan', of: 'no pans', says: /notes on/, control: /Take this layout/ },
  backup: {
    at: 'backup',
    of: 'no pans',
    says: /nothing to back up. Add a pan/,
    control: /Add a pan/,
  },
  cautions: { at: 'cautions', of: 'no pans', says: /hearing protection/, control: /Rack/ },
  'what-moves': {
    at: 'what-moves',
    of: 'no pans',
    says: /never moved on purpose/,
    control: /Rack/,
  },
  dropped: { at: 'dropped', of: 'no pans', says: /What kind of pan is it/, control: /Lead, low C/ },
  receive: { at: 'receive', of: 'no pans', says: /Choose one/, control: /Choose a file/ },
  pan: { at: '', of: 'pan', says: /Start a round and strike/, control: /Start a round/ },
  details: { at: 'details', of: 'pan', says: /What your band calls it/, control: /Save/ },
  layout: { at: 'layout', of: 'pan', says: /Tap a note to choose it/, control: /Choose C4/ },
  begin: { at: 'begin', of: 'pan', says: /names each note/, control: /Start and listen/ },
  history: { at: 'history', of: 'pan', says: /begins with the first/, control: /Start a round/ },
  send: { at: 'send', of: 'pan', says: /nothing measured yet/, control: /Save or send the file/ },
  knock: { at: 'knock', of: 'pan', says: /Look before you touch/, control: /Yes/ },
  tonight: {
    at: 'tonight',
    of: 'pan',
    says: /Strike its notes first/,
    control: /Do the knock check/,
  },
  round: {
    at: 'round/none',
    of: 'pan',
    says: /can send it to you/,
    control: /Load or restore a file/,
  },
  result: {
    at: 'result/none',
    of: 'pan',
    says: /can send it to you/,
    control: /Load or restore a file/,
  },
  note: { at: 'note/62', of: 'pan', says: /has not been heard yet/, control: /Work on this note/ },
  bench: { at: 'bench/62', of: 'pan', says: /microphone is off/, control: /^Listen$/ },
  sheet: { at: 'sheet', of: 'pan', says: /has not been heard yet/, control: /Start a round/ },
  'taken-out': {
    at: 'taken-out',
    of: 'pan',
    says: /Nothing was taken out/,
    control: /^Back$/,
  },
  answers: { at: 'answers', of: 'pan', says: /Nothing is known yet/, control: /pan/i },
  tuned: { at: 'tuned', of: 'pan', says: /No visit is written down yet/, control: /Keep it/ },
  visit: { at: 'visit', of: 'no pans', says: /No pans are kept here yet/, control: /Add a pan/ },
  'bare-bench': { at: 'bench/62', of: 'no pans', says: /microphone is off/, control: /^Listen$/ },
};

/** All screens there are: those that come with the first JavaScript, and the table of all others, which the compiler holds complete. */
const screens: readonly string[] = [
  'rack',
  'listen',
  ...[
    ...readFileSync(join(import.meta.dirname, '../../src/ui/screen-loaders.ts'), 'utf8').matchAll(
      /^ {2}'?([a-z-]+)'?: \(\) =>/gm,
    ),
  ].map(([, screen = '']) => screen),
];

/** Where the links of the page lead that can be seen, and tapped, without unfolding anything. */
async function linksOf(page: Page): Promise<readonly string[]> {
  const visible = () =>
    page.evaluate((reading) => {
      const main = document.querySelector('main');
      if (!main || main.textContent?.includes(reading)) return [];
      return [...main.querySelectorAll('a[href^="#/"]')]
        .filter((link) => link.checkVisibility())
        .map((link) => link.getAttribute('href') ?? '');
    }, rackWords.reading);
  // A page is done when nothing is being read for it and it has shown the same links for a while.
  for (let links = await visible(); ; ) {
    await page.waitForTimeout(400);
    const now = await visible();
    if (now.length > 0 && now.join() === links.join()) return now;
    links = now;
  }
}

/** The screens that are reached from the rack with one tap and with two. */
async function walk(app: OpenedApp): Promise<ReadonlyMap<string, number>> {
  const { page } = app;
  const taps = new Map<string, number>([['rack', 0]]);
  const reached = (hash: string, count: number) => {
    const { screen } = routeOf(hash);
    if (!taps.has(screen)) taps.set(screen, count);
  };
  await page.locator('main [data-pan="otter"]').waitFor();
  const first = [...new Set(await linksOf(page))];
  for (const link of first) reached(link, 1);
  for (const link of first) {
    await page.goto(`${app.address}#/`);
    await page.locator(`main a[href="${link}"]`).first().click();
    await page.waitForURL(`${app.address}${link}`);
    await page.locator('main').waitFor();
    // The tap that leads there turns the microphone on, and three strikes are heard.
    if (link === addressOf('listen')) {
      await untilListening(page);
      await tellStrikes(page, 3);
      await page.locator('#readout[data-state="settled"]').waitFor();
    }
    for (const next of await linksOf(page)) reached(next, 2);
  }
  return taps;
}

describe('every screen', () => {
  it('is reached from the rack with two taps at most', async () => {
    const app = await openWithRecords(
      '#/',
      {
        records: [
          ...panWith({ name: 'Heron' }, [{}, { day: 30 }]),
          ...asPan('otter', panWith({ name: 'Otter' }, [{ only: [60, 62], isOpen: true }])),
        ],
      },
      { beforeApp: standInEar },
    );
    try {
      expect(screens.length).toBeGreaterThan(20);
      const taps = await walk(app);
      expect(screens.filter((screen) => !taps.has(screen))).toEqual([]);
    } finally {
      await app.close();
    }
  });

  it('says what to do next when there is nothing to show on it, and has the control for it', async () => {
    const empty = await openApp('#/');
    const withPan = await openWithRecords('#/', { records: panWith({ name: 'Heron' }, []) });
    try {
      for (const screen of screens) {
        const step = nextSteps[screen];
        if (!step) throw new Error(`What does ${screen} say when there is nothing to show on it?`);
        const { at, of, says, control } = step;
        const app = of === 'pan' ? withPan : empty;
        const hash = of === 'pan' ? `#/pan/pan-1/${at}`.replace(/\/$/, '') : `#/${at}`;
        expect(routeOf(hash).screen, hash).toBe(screen);
        await app.page.goto(`${app.address}${hash}`);
        const main = app.page.locator('main');
        await main.getByText(says).first().waitFor();
        const next = main
          .getByRole('link', { name: control })
          .or(main.getByRole('button', { name: control }))
          .or(main.getByLabel(control));
        await next.first().waitFor();
      }
    } finally {
      await empty.close();
      await withPan.close();
    }
  });
});
