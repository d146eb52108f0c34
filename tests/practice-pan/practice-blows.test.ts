import { describe, expect, it } from 'vitest';
import { notesOf } from '../../src/domain/pans/layout';
import { neighboursOf } from '../../src/domain/pans/neighbours';
import { ringPairs, ringPartnersOf } from '../../src/domain/pans/ring-partners';
import { blowPlaces } from '../../src/domain/records/blow-places';
import { cents, midiNote } from '../../src/domain/tuning/units';
import { createHiddenResponse } from '../../src/practice-pan/hidden-response';
import type { PracticeTruth } from '../../src/practice-pan/practice-levels';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { seededRandom } from '../../src/practice-pan/seeded-random';
import { anyNote, onlyStrike } from '../dsp/listen-to';
import { placed } from '../synthetic-sounds/sounds';

const note = midiNote(66);
const border = { place: 'border', side: 'above' } as const;
const seeds = Array.from({ length: 40 }, (_, k) => k + 1);

type Pan = ReturnType<typeof createPracticePan>;
function truthOf(pan: Pan, of = note): PracticeTruth {
  const truth = pan.truth(of);
  if (!truth) throw new Error('the note is missing');
  return truth;
}

describe('blows on the practice pan', () => {
  it('around the border from above raise all three partials, more or less from pan to pan', () => {
    const moves = seeds.map((seed) => {
      const pan = createPracticePan(seed);
      const before = truthOf(pan);
      pan.hammer(note, border, 'light', 3);
      return truthOf(pan).fundamentalCents - before.fundamentalCents;
    });
    expect(moves.filter((cents) => cents > 0).length).toBeGreaterThanOrEqual(38);
    expect(Math.max(...moves)).toBeGreaterThan(4 * Math.min(...moves.map(Math.abs)));
  });

  it('towards the middle from above lower the fundamental, but not always', () => {
    const falls = seeds.filter((seed) => {
      const usual = createHiddenResponse(seed).usualMovement(note, {
        place: 'middle',
        side: 'above',
      });
      return usual[0] < 0;
    });
    expect(falls.length).toBeGreaterThan(20);
    expect(falls.length).toBeLessThan(40);
  });

  it('have an effect between 0.3 and 3 times the usual one, on every pan and note', () => {
    const sizes = seeds.flatMap((seed) => {
      const response = createHiddenResponse(seed);
      return notesOf(createPracticePan(1).layout).map(
        (each) => response.usualMovement(each, border)[0] / 4,
      );
    });
    expect(Math.min(...sizes)).toBeCloseTo(0.3, 2);
    expect(Math.max(...sizes)).toBeCloseTo(3, 2);
    // As often below 1 as above.
    const small = sizes.filter((size) => size < 0.95).length / sizes.length;
    expect(small).toBeGreaterThan(0.35);
    expect(small).toBeLessThan(0.65);
  });

  it('differ from each other, and follow from the seed', () => {
    const course = (seed: number) => {
      const pan = createPracticePan(seed);
      return Array.from({ length: 6 }, () => {
        const before = truthOf(pan).fundamentalCents;
        pan.hammer(note, border, 'light', 1);
        return truthOf(pan).fundamentalCents - before;
      });
    };
    expect(course(5)).toEqual(course(5));
    expect(course(5)).not.toEqual(course(6));
    expect(new Set(course(5)).size).toBe(6);
  });

  it('that are firm do more, and now and then far too much', () => {
    const response = createHiddenResponse(3);
    const chance = seededRandom(9);
    const blow = (firmness: 'light' | 'firm') =>
      Array.from({ length: 2000 }, () => response.oneBlow(note, border, firmness, chance)[0]);
    const mean = (values: number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
    const [light, firm] = [blow('light'), blow('firm')];
    expect(mean(firm) / mean(light)).toBeGreaterThan(1.9);
    const farTooMuch = firm.filter((each) => each > 4 * mean(light)).length / firm.length;
    expect(farTooMuch).toBeGreaterThan(0.03);
  });

  it('move neighbours a little, and notes that have nothing to do with it not at all', () => {
    const pan = createPracticePan(8);
    const neighbours = neighboursOf(pan.layout, note).map((each) => each.note);
    const before = new Map(notesOf(pan.layout).map((each) => [each, truthOf(pan, each)]));
    pan.hammer(note, border, 'light', 9);
    const moved = (of: typeof note) =>
      Math.abs(truthOf(pan, of).fundamentalCents - (before.get(of)?.fundamentalCents ?? 0));
    for (const neighbour of neighbours) {
      expect(moved(neighbour)).toBeGreaterThan(0);
      expect(moved(neighbour)).toBeLessThan(0.1 * moved(note));
    }
    const partners = ringPartnersOf(note, ringPairs(pan.layout)).map(({ other }) => other.note);
    const strangers = notesOf(pan.layout).filter(
      (each) => each !== note && !neighbours.includes(each) && !partners.includes(each),
    );
    expect(strangers.length).toBeGreaterThan(5);
    for (const stranger of strangers) expect(moved(stranger)).toBe(0);
  });

  it('do less and less, and in the end loosen and choke the note', () => {
    const pan = createPracticePan(8);
    const move = (count: number) => {
      const before = truthOf(pan).fundamentalCents;
      pan.hammer(note, border, 'firm', count);
      return truthOf(pan).fundamentalCents - before;
    };
    const first = move(10);
    move(60);
    expect(move(10)).toBeLessThan(0.6 * first);
    move(300);
    const choked = pan.strike(note, 0.7, 48_000);
    const whole = createPracticePan(8).strike(note, 0.7, 48_000);
    const tail = (sound: Float32Array) =>
      sound.slice(24_000, 36_000).reduce((sum, each) => sum + each ** 2, 0);
    // Ring partners go on sounding.
    expect(tail(choked)).toBeLessThan(0.05 * tail(whole));
  });

  it('are heard in the next strike', () => {
    const pan = createPracticePan(29);
    const sampleRate = 48_000;
    pan.hammer(note, border, 'firm', 4);
    const samples = placed([{ at: 0.3, samples: pan.strike(note, 0.7, sampleRate) }], {
      sampleRate,
      seconds: 2,
    });
    const strike = onlyStrike(samples, sampleRate, { ...anyNote, notes: notesOf(pan.layout) });
    const truth = truthOf(pan);
    expect(
      Math.abs(truth.fundamentalCents - truthOf(createPracticePan(29)).fundamentalCents),
    ).toBeGreaterThan(2);
    expect(Math.abs(strike.fundamental.cents - truth.fundamentalCents)).toBeLessThan(0.5);
    expect(Math.abs((strike.octave?.centsFromOwn ?? 99) - truth.octaveCents)).toBeLessThan(1);
  });

  it('on a note that the pan does not have do nothing', () => {
    const pan = createPracticePan(2);
    pan.hammer(midiNote(20), border, 'firm', 3);
    expect(notesOf(pan.layout).map((each) => truthOf(pan, each))).toEqual(
      notesOf(pan.layout).map((each) => truthOf(createPracticePan(2), each)),
    );
  });
});

describe('a practice pan at the beginning', () => {
  const out = (level: 'one-flat' | 'some-out' | 'dropped', seed: number) => {
    const pan = createPracticePan(seed, { level });
    return notesOf(pan.layout).filter((each) => Math.abs(truthOf(pan, each).fundamentalCents) > 5);
  };

  it('has one flat note, some notes out, or a third of them after a fall', () => {
    for (const seed of seeds.slice(0, 10)) {
      const pan = createPracticePan(seed, { level: 'one-flat' });
      const flat = notesOf(pan.layout).filter((each) => truthOf(pan, each).fundamentalCents < -5);
      expect([flat.length, out('one-flat', seed).length]).toEqual([1, 1]);
      expect(out('some-out', seed)).toHaveLength(5);
      expect(out('dropped', seed)).toHaveLength(10);
    }
  });

  it('has the planted notes as they were planted', () => {
    const truth: PracticeTruth = {
      fundamentalCents: cents(-12),
      octaveCents: cents(-8),
      third: { kind: 'double-octave', cents: cents(3) },
    };
    const pan = createPracticePan(4, { planted: new Map([[note, truth]]) });
    expect(pan.truth(note)).toEqual(truth);
    expect(pan.truth(midiNote(60))).toEqual(createPracticePan(4).truth(midiNote(60)));
  });

  it('answers to blows at every place and side with finite numbers', () => {
    for (const place of blowPlaces) {
      const pan = createPracticePan(7);
      pan.hammer(note, { place, side: 'below' }, 'light', 5);
      const { fundamentalCents, octaveCents, third } = truthOf(pan);
      expect([fundamentalCents, octaveCents, third.cents].every(Number.isFinite)).toBe(true);
    }
  });
});
