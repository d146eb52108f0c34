// With the server process gone: everything that this app promises still works.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { floatWav } from '../synthetic-sounds/float-wav';
import { leadNote, placed } from '../synthetic-sounds/sounds';
import { type OpenedApp, openApp } from './open-app';

const sampleRate = 44_100;
const truth = {
  target: 440 * 2 ** (5 / 12),
  fundamental: -9,
  octave: -5,
  third: 2,
  thirdTimes: 4,
} as const;
const note = leadNote(truth, sampleRate);
/** Six strikes for the microphone: three must agree, and a busy machine may lose some. */
const manyStrikes = placed(
  [1.5, 3.1, 4.7, 6.3, 7.9, 9.5].map((at) => ({ at, samples: note })),
  { sampleRate, seconds: 12 },
);
const strikes = placed(
  [1.5, 3.1, 4.7].map((at) => ({ at, samples: note })),
  { sampleRate, seconds: 8 },
);

describe('without a server', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    // In a subfolder, as on many static hosts.
    app = await openApp('#/', {
      sound: { samples: manyStrikes, sampleRate },
      basePath: '/some/folder/',
    });
    await app.page.locator('[data-offline="ready"]').waitFor();
    await app.stopServer();
    await app.page.reload();
    await app.page.locator('main').waitFor();
  });
  afterAll(() => app.close());

  it('reloads, listens and gives a verdict', async () => {
    await app.page.getByRole('link', { name: 'Listen' }).click();
    await app.page.locator('#readout[data-state="settled"]').waitFor();
    expect(await app.page.locator('#readout').getAttribute('data-verdict')).toBe('flat');
    await app.page.getByRole('link', { name: 'Back' }).click();
  });

  it('opens a sound file and reads it without resampling', async () => {
    const picker = app.page.locator('main.rack input[type="file"]');
    await picker.setInputFiles({
      name: 'three strikes.wav',
      mimeType: 'audio/wav',
      buffer: Buffer.from(floatWav(strikes, sampleRate)),
    });
    await app.page.getByText('3 strikes were heard in this file.').waitFor();
    expect(await app.page.locator('#readout').getAttribute('data-note')).toBe('D5');
    await app.page.getByRole('link', { name: 'Back' }).click();
  });

  it('says in a sentence that a text file is no sound', async () => {
    await app.page.locator('main.rack input[type="file"]').setInputFiles({
      name: 'notes.wav',
      mimeType: 'audio/wav',
      buffer: Buffer.from('no sound at all'),
    });
    await app.page.getByText('This file is no sound that can be read here.').waitFor();
    await app.page.getByRole('link', { name: 'Back' }).click();
  });

  it('strikes the practice pan by keyboard alone', async () => {
    await app.page.getByRole('link', { name: 'Practice pan' }).press('Enter');
    const note = app.page.getByRole('button', { name: 'Strike D4' });
    await note.focus();
    await note.press('Enter');
    await app.page.locator('#readout[data-note="D4"][data-state="heard"]').waitFor();
    await app.page.getByRole('link', { name: 'Back' }).press('Enter');
  });

  it('shows no error', () => {
    expect(app.problems.filter((problem) => !problem.includes('ERR_CONNECTION_REFUSED'))).toEqual(
      [],
    );
  });
});

describe('ready for offline use', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp('#/', { basePath: '/some/folder/', beforeApp: recordOfflineState });
    await app.page.locator('[data-offline="ready"]').waitFor();
  });
  afterAll(() => app.close());

  it.each(['assets/index-', 'assets/analysis.worker-', 'assets/practice-screen-', 'index.html'])(
    'is taken back when %s is missing in the copy, and said again when it is back',
    async (name) => {
      const taken = await app.page.evaluate(takeOutOfCopy, name);
      expect(taken).toContain(name);
      expect(await offlineStatesAfterReload(app, 3000)).toEqual(['not-ready']);
      expect(await app.page.locator('.offline').textContent()).not.toContain('Ready');
      await app.page.evaluate(putBack, taken);
      expect(await offlineStatesAfterReload(app, 30_000)).toEqual(['not-ready', 'ready']);
    },
  );
});

declare global {
  interface Window {
    offlineStates?: string[];
  }
}

/** Runs in the page before the app: every different state that the first screen has shown. */
function recordOfflineState(): void {
  const states: string[] = [];
  window.offlineStates = states;
  new MutationObserver(() => {
    const state = document.querySelector<HTMLElement>('[data-offline]')?.dataset['offline'];
    if (state !== undefined && state !== states.at(-1)) states.push(state);
  }).observe(document, { subtree: true, childList: true, attributes: true });
}

/** In the page: deletes the first kept file whose address holds `name`; returns its address. */
async function takeOutOfCopy(name: string): Promise<string> {
  const [cacheName = ''] = await caches.keys();
  const cache = await caches.open(cacheName);
  const request = (await cache.keys()).find(({ url }) => url.includes(name));
  if (!request) throw new Error(`${name} is not in the copy`);
  await cache.delete(request);
  return request.url;
}

/** In the page: fetches a file that was taken out and keeps it under the very same address. */
async function putBack(address: string): Promise<void> {
  const [cacheName = ''] = await caches.keys();
  await (await caches.open(cacheName)).put(address, await fetch(address));
}

/** Reloads; resolves to what the page has said until it said "ready", or for so long (ms) without. */
async function offlineStatesAfterReload(
  { page }: OpenedApp,
  timeout: number,
): Promise<readonly string[]> {
  await page.reload();
  await page.locator('main').waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready);
  // "Ready" comes within a few hundredths of a second; its absence can only be waited for.
  await page
    .locator('[data-offline="ready"]')
    .waitFor({ timeout })
    .catch(() => undefined);
  return page.evaluate(() => window.offlineStates ?? []);
}
