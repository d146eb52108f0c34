// The microphone lost and back: a sentence, a button, no exception, no dead end.
import { describe, expect, it } from 'vitest';
import { leadNote, placed } from '../synthetic-sounds/sounds';
import { openApp } from './open-app';

const sampleRate = 44_100;
const note = leadNote(
  { target: 440 * 2 ** (5 / 12), fundamental: -9, octave: -5, third: 2, thirdTimes: 4 },
  sampleRate,
);
const strikes = {
  samples: placed(
    [1.5, 3.1, 4.7, 6.3, 7.9, 9.5].map((at) => ({ at, samples: note })),
    { sampleRate, seconds: 12 },
  ),
  sampleRate,
};

declare global {
  interface Window {
    microphoneTracks?: MediaStreamTrack[];
  }
}

/** Keeps the tracks that the app was given, so that a test can pull the plug. */
function keepTracks(): void {
  const kept: MediaStreamTrack[] = [];
  window.microphoneTracks = kept;
  const devices = navigator.mediaDevices;
  const ask = devices.getUserMedia.bind(devices);
  devices.getUserMedia = async (wanted) => {
    const stream = await ask(wanted);
    kept.push(...stream.getTracks());
    return stream;
  };
}

describe('the microphone', () => {
  it('lost in the middle of a strike: says so, and one tap brings it back to a verdict', async () => {
    const app = await openApp('#/listen', { sound: strikes, beforeApp: keepTracks });
    try {
      await app.page.getByRole('button', { name: 'Listen' }).click();
      await app.page.locator('[data-microphone="listening"]').waitFor();
      // The first strike begins 1.5 s after the microphone was opened.
      await app.page.waitForTimeout(1300);
      await app.page.evaluate(() => {
        for (const track of window.microphoneTracks ?? []) {
          track.stop();
          track.dispatchEvent(new Event('ended'));
        }
      });
      await app.page.getByText('The microphone was lost.').waitFor();
      await app.page.getByRole('button', { name: 'Listen again' }).click();
      await app.page.locator('#readout[data-state="settled"]').waitFor();
      expect(await app.page.locator('#readout').getAttribute('data-verdict')).toBe('flat');
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
