import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { heardBeats, type NoteLines, partnerBeats } from '../../../src/domain/pans/partner-beats';
import { ringPairs } from '../../../src/domain/pans/ring-partners';
import { noteName, parseNote } from '../../../src/domain/tuning/note-names';
import { cents, hertz, type MidiNote, midiNote } from '../../../src/domain/tuning/units';

interface Sketch {
  readonly fundamental?: number;
  readonly octave?: number | null;
  readonly rival?: number;
  readonly twelfth?: number;
  readonly sigma?: number;
}
const lines = ({ fundamental = 0, octave = null, rival, twelfth, sigma = 0.2 }: Sketch) => {
  const line = (value: number) => ({ cents: cents(value), sigmaCents: cents(sigma) });
  return {
    fundamental: line(fundamental),
    octave: octave === null ? null : line(octave),
    octaveRival: rival === undefined ? null : line(rival),
    third: twelfth === undefined ? null : { kind: 'twelfth' as const, ...line(twelfth) },
  } satisfies NoteLines;
};
const noteOf = (name: string): MidiNote => parseNote(name) ?? midiNote(0);
/** C3 upwards, so that the published table's notes are all there. */
const layout = {
  ...lowCLead,
  drums: lowCLead.drums.map((drum) => ({
    ...drum,
    notes: [
      ...drum.notes,
      ...drum.notes.slice(0, 12).map((place) => ({ ...place, note: midiNote(place.note - 12) })),
    ],
  })),
};
const beatsOf = (notes: Readonly<Record<string, Sketch>>) =>
  partnerBeats(
    ringPairs(layout),
    new Map(Object.entries(notes).map(([name, sketch]) => [noteOf(name), lines(sketch)])),
    hertz(440),
  );

describe('the beats of ring partners', () => {
  // 2 f · (2^(c/1200) − 1) over equal temperament at A4 = 440 Hz, by arithmetic.
  it.each([
    ['C4', 'C5', 5, 1.51],
    ['C4', 'C5', 10, 3.03],
    ['C5', 'C6', 5, 3.03],
    ['C5', 'C6', 10, 6.06],
    ['C3', 'C4', 5, 0.76],
    ['C3', 'C4', 10, 1.52],
  ])('of %s and %s, %s cents apart at the octave, are %s a second', (low, high, apart, beat) => {
    const [found] = beatsOf({ [low]: { octave: 0 }, [high]: { fundamental: apart } });
    expect(found?.cents).toBeCloseTo(apart, 9);
    // The table has two decimals.
    expect(Math.abs((found?.beatHz ?? 0) - beat)).toBeLessThan(0.0051);
  });

  it('of the pan in a published list are 2.8 cents between C5 and C6, 1.9 between C5 and G5', () => {
    // Piano technicians' mailing list, 14 June 1996: C5 26.0 23.9 26.2, G5 21.3 24.3, C6 26.7 cents, each
    // against the nearest note of equal temperament; a true twelfth lies 1.955 cents above that.
    const beats = beatsOf({
      C5: { fundamental: 26.0, octave: 23.9, twelfth: 26.2 - 1.955 },
      G5: { fundamental: 21.3, octave: 24.3 },
      C6: { fundamental: 26.7 },
    });
    const found = beats.map(({ pair, cents: apart }) => [
      `${noteName(pair.low.note)} ${noteName(pair.high.note)}`,
      Number(apart.toFixed(2)),
    ]);
    expect(found).toEqual([
      ['C5 C6', 2.8],
      ['C5 G5', -1.9],
    ]);
  });

  it('are listed with the widest interval first', () => {
    const beats = beatsOf({
      C4: { octave: 0, fundamental: 0 },
      C5: { fundamental: 4, octave: 0 },
      C6: { fundamental: -20 },
    });
    expect(beats.map(({ cents: apart }) => Math.round(apart))).toEqual([-20, 4]);
  });

  it('need both lines', () => {
    expect(beatsOf({ C4: { octave: null }, C5: { fundamental: 4 } })).toEqual([]);
    expect(beatsOf({ C4: { octave: 3 } })).toEqual([]);
  });

  it('take of two lines the one that is not the partner’s', () => {
    for (const [octave, rival] of [
      [0, 12],
      [12, 0],
    ] as const) {
      const [found] = beatsOf({ C4: { octave, rival }, C5: { fundamental: 11.5 } });
      expect(found?.cents).toBeCloseTo(11.5, 6);
    }
  });

  it('are heard when they are quicker than one a second and surely there', () => {
    const heard = (apart: number, sigma: number) =>
      heardBeats(beatsOf({ C4: { octave: 0, sigma }, C5: { fundamental: apart, sigma } })).length;
    expect(heard(5, 0.2)).toBe(1);
    expect(heard(3, 0.2)).toBe(0);
    expect(heard(5, 3)).toBe(0);
  });
});
