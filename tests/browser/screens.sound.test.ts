// What was struck, put right by a tap.
import { describe, expect, it } from 'vitest';
import { leadNote, placed } from '../synthetic-sounds/sounds';
import { openApp } from './open-app';

const sampleRate = 44_100;
const d5 = 440 * 2 ** (5 / 12);
const soundOf = (fundamental: number, octave: number, third: number) => ({
  samples: placed(
    [1.2, 2.8, 4.4].map((at) => ({
      at,
      samples: leadNote({ target: d5, fundamental, octave, third, thirdTimes: 4 }, sampleRate),
    })),
    { sampleRate, seconds: 6 },
  ),
  sampleRate,
});

describe('the screens', () => {
  it('put the octave right at one tap, and name the note that rings instead of the expected one', async () => {
    const app = await openApp('#/', { sound: soundOf(-9, 4, 0) });
    try {
      await app.page.getByRole('link', { name: 'Listen' }).click();
      await app.page.locator('#readout[data-note="D5"]').waitFor();
      await app.page.getByRole('button', { name: 'It is an octave higher' }).click();
      await app.page.locator('#readout[data-note="D6"][data-state="heard"]').waitFor();
      const seen = await app.history();
      const read = seen.findLast(({ note }) => note === 'D6');
      // The fundamental is 9 flat and its octave 4 sharp of twice that.
      expect(Math.abs(Number(read?.fundamentalCents) + 5), JSON.stringify(seen)).toBeLessThan(1);
      // The next strike is another D5.
      await app.page.getByText('D5 is ringing. Damp it and strike again.').waitFor();
      expect(app.problems).toEqual([]);
    } finally {
      await app.close();
    }
  });
});
