// A whole round through all that is computed: strikes, progress, kept records, result.
import { describe, expect, it } from 'vitest';
import type { Strike } from '../../../src/domain/measurement/strike';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { strikesOf } from '../../../src/domain/reading/reading-values';
import type { ReadingRecord, RoundWay } from '../../../src/domain/records/rack-records';
import { strikeRecordOf } from '../../../src/domain/records/strike-record';
import { resumeRound } from '../../../src/domain/rounds/resume-round';
import { octaveOrder } from '../../../src/domain/rounds/round-order';
import {
  beginRound,
  isFinished,
  nextNote,
  type RoundProgress,
  strikeHeard,
} from '../../../src/domain/rounds/round-progress';
import { roundResult } from '../../../src/domain/rounds/round-result';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, hertz, type MidiNote, midiNote } from '../../../src/domain/tuning/units';
import { between, gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import { leadNotes } from './result-sample';
import { readingSample, startSample } from './round-sample';

const aim = { a4: hertz(440), offset: cents(0) };
const planted = -7;

function pan(seed: number) {
  const random = seededRandom(seed);
  const gaussian = gaussianFrom(random);
  const worst = new Map([
    [67, -34],
    [62, 27],
    [81, -21],
  ]);
  const truth = new Map(
    leadNotes.map((note) => [note, planted + between(random, -1.5, 1.5) + (worst.get(note) ?? 0)]),
  );
  const strike = (note: MidiNote, event: number): Strike => {
    const fundamental = (truth.get(note) ?? 0) + 0.25 * gaussian();
    const sketch = { note, fundamental, octave: gaussian(), strikes: 1, sigma: 0.15 };
    const [heard] = strikesOf(readingSample(null, sketch), aim);
    if (!heard) throw new Error('no strike');
    return { ...heard, event };
  };
  return { random, truth, strike };
}

const resultOf = (way: RoundWay, readings: readonly ReadingRecord[]) =>
  roundResult(
    { start: startSample({ way }), readings, marks: new Map(), layout: lowCLead, a4: aim.a4 },
    { limits: usualTolerances, reference: 'pan' },
  );

const kept = (note: MidiNote, strikes: readonly Strike[], minutes: number): ReadingRecord => ({
  ...readingSample(startSample(), { note }, minutes),
  strikes: strikes.map(strikeRecordOf),
});

describe('a guided round of 29 notes', () => {
  it('finds the planted detunings within 1 cent and the pan pitch within 0.5, also when interrupted', () => {
    const { truth, strike } = pan(5);
    const order = octaveOrder(leadNotes.map(midiNote));
    const readings: ReadingRecord[] = [];
    let progress: RoundProgress = beginRound('guided', order);
    let event = 0;
    for (let n = 0; n < 400 && !isFinished(progress); n++) {
      if (n === 40) {
        // The phone went off: only what was kept is left.
        progress = resumeRound({
          way: 'guided',
          order,
          readings: readings.map((each) => ({ note: each.note, strikes: strikesOf(each, aim) })),
          marks: [],
        });
        event = 0;
      }
      const note = nextNote(progress);
      if (note === null) break;
      event++;
      const step = strikeHeard(progress, strike(note, event));
      progress = step.progress;
      if (step.event.kind === 'locked') {
        readings.push(kept(note, step.event.reading.strikes, readings.length + 1));
      }
    }
    expect(isFinished(progress)).toBe(true);
    expect(readings.map(({ note }) => note)).toEqual(order);
    const result = resultOf('guided', readings);
    for (const { note, againstBand } of result.notes) {
      expect(Math.abs((againstBand ?? 99) - (truth.get(note) ?? 0)), `${note}`).toBeLessThan(1);
    }
    const error = Math.abs((result.panPitch?.cents ?? 99) - planted);
    expect(error, `pan pitch off by ${error}`).toBeLessThan(0.5);
    expect(result.worst.slice(0, 3).map(({ note }) => note)).toEqual([67, 62, 81]);
  });
});

describe('a quick round of 29 single strikes in random order', () => {
  it('loses none and names the planted worst three', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { random, strike } = pan(seed);
      const order = leadNotes
        .map((note) => ({ note: midiNote(note), key: random() }))
        .sort((one, other) => one.key - other.key)
        .map(({ note }) => note);
      const readings: ReadingRecord[] = [];
      let progress = beginRound('quick', leadNotes.map(midiNote));
      for (const [k, note] of order.entries()) {
        const step = strikeHeard(progress, strike(note, k + 1));
        progress = step.progress;
        if (step.event.kind === 'locked') readings.push(kept(note, step.event.reading.strikes, k));
      }
      expect(isFinished(progress)).toBe(true);
      expect(readings).toHaveLength(29);
      const result = resultOf('quick', readings);
      expect(result.worst.slice(0, 3).map(({ note }) => note)).toEqual([67, 62, 81]);
      const out = result.notes.filter(({ quick }) => quick === 'out').map(({ note }) => note);
      expect(out).toEqual([62, 67, 81]);
    }
  });
});
