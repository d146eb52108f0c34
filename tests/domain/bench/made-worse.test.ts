import { describe, expect, it } from 'vitest';
import { partialsMadeWorse } from '../../../src/domain/bench/made-worse';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, midiNote } from '../../../src/domain/tuning/units';
import type { Judged } from '../../../src/domain/tuning/verdict';

const tuned = (octave: number, third: number, note = 88, sigma = 0.3): Judged => ({
  note: midiNote(note),
  fundamental: { cents: cents(1) },
  octave: { centsFromOwn: cents(octave), sigmaCents: cents(sigma) },
  third: { kind: 'double-octave', centsFromOwn: cents(third), sigmaCents: cents(sigma) },
});
const worse = (before: Judged, now: Judged) => partialsMadeWorse(before, now, usualTolerances);

describe('partials of a top note after blows', () => {
  it('are told as worse where they lie further from their note than before, and beyond good', () => {
    expect(worse(tuned(-1, -2), tuned(-7, -14))).toEqual([
      { partial: 'octave', before: -1, now: -7 },
      { partial: 'double-octave', before: -2, now: -14 },
    ]);
    // To the other side as well.
    expect(worse(tuned(-6, 0), tuned(9, 0))).toMatchObject([{ partial: 'octave', now: 9 }]);
  });

  it('are not where they came nearer, stayed within good, or moved less than can be said', () => {
    expect(worse(tuned(-14, 0), tuned(-7, 0))).toEqual([]);
    expect(worse(tuned(0, 0), tuned(4, 9))).toEqual([]);
    expect(worse(tuned(-7, 0), tuned(-8, 0))).toEqual([]);
    expect(worse(tuned(-1, 0, 88, 4), tuned(-7, 0, 88, 4))).toEqual([]);
  });

  it('are not where it is open which line is the octave, or another third was found', () => {
    const octaveRival = { centsFromOwn: cents(2) };
    expect(worse(tuned(-1, 0), { ...tuned(-9, 0), octaveRival })).toEqual([]);
    const twelfth = { kind: 'twelfth', centsFromOwn: cents(30) } as const;
    expect(worse(tuned(0, 0), { ...tuned(0, 0), third: twelfth })).toEqual([]);
  });

  it('are left to the verdict of a note that is judged by them', () => {
    expect(worse(tuned(-1, -2, 84), tuned(-7, -14, 84))).toEqual([]);
  });
});
