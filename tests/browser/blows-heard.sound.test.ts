// Hammer blows between strikes, through the fake microphone: counted as a set, never measured.
import { expect, it } from 'vitest';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { blowMakers } from '../sounds/blow-kinds';
import { recordedKnocks } from '../sounds/recorded-knocks';
import { realStrikes } from '../synthetic-sounds/real-strike';
import { leadNote, placed } from '../synthetic-sounds/sounds';
import { openApp } from './open-app';

const sampleRate = 44_100;
const d5 = 440 * 2 ** (5 / 12);
const strikeOf = (fundamental: number) =>
  leadNote({ target: d5, fundamental, octave: -5, third: 2, thirdTimes: 4 }, sampleRate);
const scaled = (sound: Float32Array, gain: number) => sound.map((value) => gain * value);

/** Flat by 9 cents; five blows, one of each kind, into what still rings; flat by 3 cents. */
async function work() {
  const bank = { strikes: await realStrikes(), knocks: await recordedKnocks() };
  const random = seededRandom(5);
  const ringing = scaled(strikeOf(-5), 0.06);
  const blows = blowMakers.flatMap(([, make], k) => {
    const at = 6.4 + 0.6 * k;
    return [
      { at, samples: scaled(make(random, sampleRate, bank), 0.5) },
      { at, samples: ringing },
    ];
  });
  const struck = (first: number, fundamental: number) =>
    [0, 1.6, 3.2, 4.8].map((after) => ({ at: first + after, samples: strikeOf(fundamental) }));
  const before = struck(1.5, -9).slice(0, 3);
  const events = [...before, ...blows, ...struck(10.4, -3)];
  return { samples: placed(events, { sampleRate, seconds: 17 }), sampleRate };
}

declare global {
  interface Window {
    mostBlows?: number;
  }
}

/** Runs in the page before the app: how many blows it has counted in a set, for the next strike takes them off the screen. */
function recordBlows(): void {
  window.mostBlows = 0;
  new MutationObserver(() => {
    const counted = Number(document.querySelector<HTMLElement>('.bench')?.dataset['blows'] ?? 0);
    window.mostBlows = Math.max(window.mostBlows ?? 0, counted);
  }).observe(document, { subtree: true, childList: true, attributes: true });
}

it('a set of five blows is heard as blows, and what they did is told after the next strikes', async () => {
  const app = await openApp('#/bench/74', { sound: await work(), beforeApp: recordBlows });
  try {
    const { page } = app;
    await page.getByRole('button', { name: 'Listen', exact: true }).click();
    await page.locator('[data-change="0"][data-sure="true"]').waitFor();
    await page.locator('#readout[data-state="settled"]').waitFor();
    expect(await page.locator('main').getAttribute('data-sets')).toBe('1');
    expect(await page.evaluate(() => window.mostBlows)).toBe(5);
    expect(await page.locator('[data-change="0"]').textContent()).toContain('raised by 6');
    // Nothing between −9 and −3 cents was ever read: no blow and none of its ringing was measured.
    const read = (await app.history())
      .filter(({ fundamentalCents }) => fundamentalCents !== '')
      .map(({ fundamentalCents }) => Number(fundamentalCents));
    expect(read.length).toBeGreaterThan(3);
    for (const cents of read) {
      expect(Math.min(Math.abs(cents + 9), Math.abs(cents + 3)), `${cents}`).toBeLessThan(1);
    }
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
