import { describe, expect, it } from 'vitest';
import { notesOf } from '../../../src/domain/pans/layout';
import { type Onset, OnsetDetector } from '../../../src/dsp/onsets/onset-detector';
import { createPracticePan } from '../../../src/practice-pan/practice-pan';
import { seededRandom } from '../../../src/practice-pan/seeded-random';
import { pinkNoise } from '../../sounds/noise';
import { strikeScene } from '../../sounds/scene';
import { placed } from '../../synthetic-sounds/sounds';
import { finallyHeard } from '../listen-to';

const sampleRate = 48000;
const pan = createPracticePan(4);
const notes = notesOf(pan.layout);

/** Onsets in s, without the beginning of the sound itself. */
function onsetsIn(samples: Float32Array, rate: number): readonly number[] {
  const detector = new OnsetDetector(rate);
  const found: Onset[] = [];
  for (let from = 0; from < samples.length; ) {
    const count = Math.min(detector.untilStep, samples.length - from);
    const onset = detector.take(samples, from, count);
    if (onset) found.push(onset);
    from += count;
  }
  return found.map(({ sample }) => sample / rate).filter((time) => time > 0.03);
}

/** Strikes of the practice pan at their times (s), in faint noise. */
function strikesAt(strikes: readonly { readonly at: number; readonly note: number }[]) {
  const sounds = strikes.map(({ at, note }) => {
    const struck = notes.find((each) => each === note);
    if (struck === undefined) throw new Error('the pan has no such note');
    return { at, samples: pan.strike(struck, 0.5, sampleRate) };
  });
  return placed(sounds, { sampleRate, seconds: 3 });
}

describe('onsets', () => {
  it.each([
    ['a lead', 60, 88],
    ['a bass', 23, 47],
  ])('finds each strike on %s within 15 ms, and nothing in its beating', (_, lowest, highest) => {
    for (let seed = 1; seed <= 12; seed++) {
      const scene = strikeScene(seed, { lowest, highest });
      const onsets = onsetsIn(scene.samples, scene.sampleRate);
      const late = onsets.map((time) => time - scene.truth.at);
      const message = `seed ${seed}: ${late.map((time) => time.toFixed(3)).join(', ')}`;
      expect(onsets.length, message).toBeGreaterThanOrEqual(1);
      // The stick and the note may be two rises of one blow.
      expect(Math.max(...late), message).toBeLessThan(0.04);
      expect(Math.max(...late.map((time) => -time)), message).toBeLessThan(0.015);
    }
  });

  it('follows the room: noise that swells is no onset, a strike over it is one', () => {
    const noise = pinkNoise(seededRandom(8), sampleRate, 4);
    const strike = pan.strike(notes[0] as (typeof notes)[number], 0.8, sampleRate);
    const whole = noise.map((value, n) => {
      const swell = 10 ** (-4 + 1.5 * Math.min(1, n / (2.5 * sampleRate)));
      return swell * value + (strike[n - 3 * sampleRate] ?? 0);
    });
    const onsets = onsetsIn(whole, sampleRate);
    expect(onsets.filter((time) => time < 2.98)).toEqual([]);
    expect(onsets.filter((time) => Math.abs(time - 3) < 0.015).length).toBeGreaterThanOrEqual(1);
  });

  it('hears another note 0.7 s later, while the first one still rings', () => {
    const random = seededRandom(21);
    for (let round = 0; round < 8; round++) {
      const [first, second] = [random(), random()].map(
        (chance) => notes[Math.floor(chance * notes.length)] ?? notes[0],
      );
      if (first === undefined || second === undefined || first === second) continue;
      const whole = strikesAt([
        { at: 0.4, note: first },
        { at: 1.1, note: second },
      ]);
      const heard = finallyHeard(whole, sampleRate);
      const named = heard.map((each) => (each.kind === 'strike' ? each.note : each.kind));
      expect(named).toEqual([first, second]);
    }
  });
});
