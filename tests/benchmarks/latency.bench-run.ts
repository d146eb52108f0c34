// From the strike at the microphone to the words on the screen, in the production build in a real browser.
// Prints a table; never fails by time, only when the path itself is broken.
import { expect, test } from 'vitest';
import { openApp } from '../browser/open-app';
import type { HeardAttributes } from '../browser/readout-history';
import { leadNote, placed } from '../synthetic-sounds/sounds';
import { recordOnsets } from './onset-times';

const sampleRate = 44_100;
const strikeCount = 20;
const spacing = 1.9;
const firstAt = 1.5;
/** D5, E5, F#5 and G5 in turn: another note begins another reading, so that every strike changes the readout. */
const notes = [
  { name: 'D5', midi: 74 },
  { name: 'E5', midi: 76 },
  { name: 'F#5', midi: 78 },
  { name: 'G5', midi: 79 },
] as const;
const noteOf = (strike: number) => notes[strike % notes.length] ?? notes[0];

const strikes = Array.from({ length: strikeCount }, (_, n) => ({
  at: firstAt + n * spacing,
  samples: leadNote(
    {
      target: 440 * 2 ** ((noteOf(n).midi - 69) / 12),
      fundamental: (n % 7) - 9,
      octave: (n % 5) - 2,
      third: 2,
      thirdTimes: 4,
    },
    sampleRate,
  ),
}));

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((low, high) => low - high);
  const middle = sorted.length / 2;
  return (
    ((sorted[Math.ceil(middle - 1)] ?? Number.NaN) + (sorted[Math.floor(middle)] ?? Number.NaN)) / 2
  );
};

/** Seconds from `onset` to the first and to the second verdict on this strike; null where there was none. */
function delaysAfter(onset: number, note: string, history: readonly HeardAttributes[]) {
  const [first, second] = history.filter(
    (shown) =>
      shown.time > onset &&
      shown.time < onset + 1000 * spacing &&
      shown.note === note &&
      shown.verdict !== '' &&
      shown.strikes === '1',
  );
  return {
    provisional: first ? (first.time - onset) / 1000 : null,
    settled: second ? (second.time - onset) / 1000 : null,
  };
}

test('from strike to verdict', async () => {
  const seconds = firstAt + (strikeCount + 1) * spacing;
  const app = await openApp('#/', {
    sound: { samples: placed(strikes, { sampleRate, seconds }), sampleRate },
    beforeApp: recordOnsets,
  });
  try {
    await app.page.getByRole('link', { name: 'Listen' }).click();
    await app.page.waitForTimeout(1000 * seconds);
    const observed = await app.page.evaluate(() => window.onsetTimes ?? []);
    expect(observed, 'onsets at the microphone').toHaveLength(strikeCount);
    // The strikes are evenly spaced; what makes a single one look late is the delivery of its buffer.
    const start = Math.min(...observed.map((time, n) => time - 1000 * spacing * n));
    const history = await app.history();
    const delays = observed.map((_, n) =>
      delaysAfter(start + 1000 * spacing * n, noteOf(n).name, history),
    );

    const line = (name: string, limit: number, values: readonly number[]) =>
      [
        name.padEnd(20),
        String(values.length).padStart(7),
        median(values).toFixed(3).padStart(9),
        Math.min(...values)
          .toFixed(3)
          .padStart(9),
        Math.max(...values)
          .toFixed(3)
          .padStart(9),
        limit.toFixed(2).padStart(9),
      ].join('');
    const provisional = delays.flatMap((each) => each.provisional ?? []);
    const settled = delays.flatMap((each) => each.settled ?? []);
    process.stdout.write(
      `${[
        '',
        'seconds after strike strikes   median  fastest  slowest     goal',
        line('first verdict', 0.35, provisional),
        line('settled value', 0.8, settled),
        '(a settled value is counted where it differs from the first verdict in a shown digit)',
        '',
      ].join('\n')}\n`,
    );
    // Lost audio may spoil a strike, and the app says so; most must come through.
    expect(provisional.length).toBeGreaterThan(0.7 * strikeCount);
    expect(settled.length).toBeGreaterThan(0.7 * strikeCount);
    expect(app.problems).toEqual([]);
  } finally {
    await app.close();
  }
});
