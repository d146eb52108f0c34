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
    await app.page
      .getByText('This file is not a sound that can be read here. Choose a WAV file.')
      .waitFor();
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
