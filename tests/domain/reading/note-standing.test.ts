import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { judgedNote, type NoteWish, wishOf } from '../../../src/domain/reading/judge-note';
import {
  countStandings,
  shareOfGood,
  standingOf,
  standingRank,
} from '../../../src/domain/reading/note-standing';
import type { MarkKind } from '../../../src/domain/records/rack-records';
import { fineTolerances, usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, midiNote } from '../../../src/domain/tuning/units';
import { readingAfter } from './reading-sample';
import type { StrikeSketch } from './strike-sample';

const judged = (sketch: StrikeSketch, wish: NoteWish = {}, reference = 0) => {
  const reading = readingAfter(sketch);
  return judgedNote(reading.note, reading, wish, cents(reference));
};
const standing = (sketch: StrikeSketch, limits = usualTolerances) =>
  standingOf({ judged: judged(sketch) }, limits);

describe('the standing of a note whose fundamental is inferred', () => {
  it('is not judged finer than the fundamental is known, and says that it is inferred', () => {
    const near = standing({ isInferred: true, fundamental: -15, note: 30 });
    expect(near).toEqual({ standing: 'good', reason: { kind: 'inferred' } });
    const far = standing({ isInferred: true, fundamental: -24, note: 30 });
    expect(far.standing).toBe('out');
    expect(far.reason).toMatchObject({ kind: 'off', fault: { kind: 'flat', cents: -24 } });
    expect(shareOfGood(judged({ isInferred: true, fundamental: -15, note: 30 }))).toBeLessThan(1);
  });
});

describe('the standing of a note', () => {
  // The limits are the defaults of this app; no published standard exists.
  it.each([
    [5, 'good'],
    [-6, 'playable'],
    [12, 'playable'],
    [13, 'out'],
    [-30, 'out'],
    [31, 'avoid'],
  ])('with a fundamental %s cents off is %s', (fundamental, expected) => {
    expect(standing({ fundamental }).standing).toBe(expected);
  });

  it.each([
    [10, 'good'],
    [-11, 'playable'],
    [25, 'playable'],
    [26, 'out'],
    [51, 'avoid'],
  ])('with a third partial %s cents off is %s', (third, expected) => {
    expect(standing({ third }).standing).toBe(expected);
  });

  it('names the partial that keeps it from standing better', () => {
    const { standing: word, reason } = standing({ fundamental: 7, octave: -40, third: 30 });
    expect(word).toBe('avoid');
    expect(reason).toMatchObject({ kind: 'off', fault: { kind: 'octave-flat' } });
    expect(reason.kind === 'off' && reason.fault.cents).toBeCloseTo(-40, 9);
    expect(standing({ fundamental: 7 }).reason).toMatchObject({
      kind: 'off',
      fault: { kind: 'sharp' },
    });
    expect(standing({ fundamental: 3 }).reason).toEqual({ kind: 'aligned' });
  });

  it('is stricter with the fine set', () => {
    expect(standing({ fundamental: 4 }, fineTolerances).standing).toBe('playable');
    expect(standing({ fundamental: 2, third: 4 }, fineTolerances).standing).toBe('good');
    expect(standing({ third: 5 }, fineTolerances).standing).toBe('playable');
  });

  it('above C6 follows from the fundamental only', () => {
    expect(standing({ note: 85, fundamental: 2, octave: 60, third: 80 }).standing).toBe('good');
    expect(standing({ note: 84, fundamental: 2, octave: 60 }).standing).toBe('avoid');
  });

  it('does not judge the octave while two lines are there, and says so', () => {
    expect(standing({ octave: 9, rival: 20 })).toEqual({
      standing: 'good',
      reason: { kind: 'octave-open' },
    });
    expect(standing({ octave: 9, rival: 20, third: 30 }).standing).toBe('out');
  });

  it('without a reading is unread', () => {
    expect(standingOf({ judged: null })).toEqual({
      standing: 'unread',
      reason: { kind: 'unread' },
    });
    expect(standingOf({ judged: null, mark: 'skipped' }).standing).toBe('unread');
  });

  it('is to be avoided while the pitch walks', () => {
    const state = { judged: judged({}), walking: { centsPerStrike: cents(-0.8) } };
    expect(standingOf(state)).toEqual({
      standing: 'avoid',
      reason: { kind: 'walking', centsPerStrike: -0.8 },
    });
  });

  it('follows a mark, also without a reading', () => {
    const marked = (mark: MarkKind, fundamental: number) =>
      standingOf({ judged: judged({ fundamental }), mark }).standing;
    expect(marked('cracked', 0)).toBe('avoid');
    expect(marked('dead', 0)).toBe('avoid');
    expect(marked('buzzing', 0)).toBe('out');
    expect(marked('buzzing', 40)).toBe('avoid');
    expect(marked('skipped', 0)).toBe('good');
    expect(marked('none', 0)).toBe('good');
    expect(standingOf({ judged: null, mark: 'dead' })).toEqual({
      standing: 'avoid',
      reason: { kind: 'mark', mark: 'dead' },
    });
  });

  it('ranks from good to avoid', () => {
    const words = ['good', 'unread', 'playable', 'out', 'avoid'] as const;
    expect([...words].sort((a, b) => standingRank(a) - standingRank(b))).toEqual(words);
  });
});

describe('what a note is judged against', () => {
  it('is its target with its offset, and the pan pitch where that is wanted', () => {
    expect(judged({ fundamental: 9 }, { offset: cents(4) }).fundamental.cents).toBeCloseTo(5, 9);
    expect(judged({ fundamental: 9 }, {}, 8).fundamental.cents).toBeCloseTo(1, 9);
    // Alignment with the own fundamental has nothing to do with either.
    expect(judged({ octave: 3 }, { offset: cents(4) }, 8).octave?.centsFromOwn).toBeCloseTo(3, 9);
  });

  it('is the third partial it is meant to have, and no other', () => {
    const third = (wish: NoteWish) => judged({ third: 40 }, wish).third?.kind ?? null;
    expect(third({})).toBe('twelfth');
    expect(third({ third: 'twelfth' })).toBe('twelfth');
    expect(third({ third: 'double-octave' })).toBeNull();
    expect(third({ third: 'none' })).toBeNull();
  });

  it('is what its place in the layout says', () => {
    const [drum] = lowCLead.drums;
    if (!drum) throw new Error('a lead has a drum');
    const notes = drum.notes.map((place) =>
      place.note === 60 ? { ...place, offset: cents(-3) } : place,
    );
    const layout = { ...lowCLead, drums: [{ ...drum, notes }] };
    expect(wishOf(layout, midiNote(60)).offset).toBe(-3);
    expect(wishOf(layout, midiNote(62)).offset).toBeUndefined();
    expect(wishOf(layout, midiNote(30))).toEqual({});
  });

  it('says how many times the good limit the worst partial takes', () => {
    expect(shareOfGood(judged({ fundamental: 4, octave: -10, third: 15 }))).toBeCloseTo(2, 9);
    expect(shareOfGood(judged({ note: 86, fundamental: 4, octave: 90 }))).toBeCloseTo(0.8, 9);
  });
});

describe('the standings of some notes', () => {
  it('are counted, each kind that there is none of as 0', () => {
    expect(countStandings(['good', 'avoid', 'good', 'unread'])).toEqual({
      good: 2,
      playable: 0,
      out: 0,
      avoid: 1,
      unread: 1,
    });
  });
});
