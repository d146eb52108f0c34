import { describe, expect, it } from 'vitest';
import type { Heard, ListeningContext } from '../../../src/domain/measurement/strike';
import { notesOf } from '../../../src/domain/pans/layout';
import { type Onset, OnsetDetector } from '../../../src/dsp/onsets/onset-detector';
import { createPracticePan } from '../../../src/practice-pan/practice-pan';
import { between, seededRandom } from '../../../src/practice-pan/seeded-random';
import { pinkNoise } from '../../sounds/noise';
import { playedLead } from '../../sounds/played-lead';
import { playedPracticePan } from '../../sounds/played-practice-pan';
import { type Roll, rollOf, rollOfRecordings } from '../../sounds/rolls';
import { strikeScene } from '../../sounds/scene';
import { realStrikes } from '../../synthetic-sounds/real-strike';
import { placed } from '../../synthetic-sounds/sounds';
import { anyNote, finallyHeard } from '../listen-to';

const sampleRate = 48000;
const pan = createPracticePan(4);
const notes = notesOf(pan.layout);
const onPan: ListeningContext = { ...anyNote, notes };

const recordings = await realStrikes();

const inWords = (each: Heard): string =>
  `${each.kind === 'strike' ? each.note : each.kind === 'refused' ? each.reason : each.kind} at ${Math.round(each.at * 20) / 20}`;

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

  it('measures the same note struck again after 0.5 s, louder or softer', () => {
    const random = seededRandom(22);
    for (const note of notes) {
      const strokes = [0.4, 0.9].map((at) => ({ at, note, level: between(random, 0.35, 1) }));
      const heard = finallyHeard(playedPracticePan(note, strokes, sampleRate), sampleRate, onPan);
      expect(heard.map(inWords)).toEqual([`${note} at 0.4`, `${note} at 0.9`]);
    }
  });

  it('measures the same note struck again on a lead as hard as a scene nearly always', () => {
    const random = seededRandom(23);
    const outcomes = notes.map((note) => {
      const strokes = [0.4, 0.9].map((at) => ({ at, note, level: between(random, 0.35, 1) }));
      const { samples } = playedLead(note, strokes, { sampleRate });
      return finallyHeard(samples, sampleRate, onPan).map(inWords).join();
    });
    const right = outcomes.filter((each, n) => each === `${notes[n]} at 0.4,${notes[n]} at 0.9`);
    // 26 of these 29 second strikes are measured, and 59 of 60 on other leads.
    expect(right.length / notes.length, outcomes.join('; ')).toBeGreaterThanOrEqual(0.85);
  });

  describe('in rolls of 6 to 14 strokes a second, on one note or two, soft and loud', () => {
    const ways = [
      ['the practice pan', (roll: Roll) => playedPracticePan(roll.seed, roll.strokes, sampleRate)],
      ['real recordings', (roll: Roll) => rollOfRecordings(roll, recordings, sampleRate)],
      // Without any noise of a stick, and with partials that swell by 10 dB fifteen times a second.
      [
        'a lead as hard as a scene',
        (roll: Roll) => playedLead(roll.seed, roll.strokes, { sampleRate }).samples,
      ],
    ] as const;
    it.each(ways)('says too fast, and takes no strike from their middle: %s', (_, play) => {
      const rounds = Array.from({ length: 16 }, (__, n) => {
        const roll = rollOf(n + 1, notes);
        const heard = finallyHeard(play(roll), sampleRate, onPan);
        const last = (roll.strokes.at(-1)?.at ?? 0) - 0.03;
        return {
          isSaid: heard.some((each) => each.kind === 'refused' && each.reason === 'too-fast'),
          // The last stroke rings out alone and may be measured.
          fromMiddle: heard.filter((each) => each.kind === 'strike' && each.at < last),
          words: heard.map(inWords).join(', '),
        };
      });
      const notSaid = rounds.filter(({ isSaid }) => !isSaid);
      expect(notSaid.map(({ words }) => words)).toEqual([]);
      const wrong = rounds.filter(({ fromMiddle }) => fromMiddle.length > 0);
      expect(wrong.map(({ words }) => words)).toEqual([]);
    });
  });
});
