import { describe, expect, it } from 'vitest';
import { practiceOutcome } from '../../../src/domain/bench/practice-outcome';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, midiNote } from '../../../src/domain/tuning/units';
import type { Judged } from '../../../src/domain/tuning/verdict';

const tuned = (note: number, fundamental: number, octave = 0, third = 0): Judged => ({
  note: midiNote(note),
  fundamental: { cents: cents(fundamental) },
  octave: { centsFromOwn: cents(octave) },
  third: { kind: 'twelfth', centsFromOwn: cents(third) },
});
const outcomeOf = (
  before: readonly Judged[],
  after: readonly Judged[],
  worked: readonly number[] = [66],
) => practiceOutcome(before, after, worked.map(midiNote), usualTolerances);
const notes = (list: readonly { readonly note: number }[]) => list.map(({ note }) => note);

describe('what hammering a practice pan came to', () => {
  it('names notes that stand better as gained, with how they stood', () => {
    const { gained, spoiled } = outcomeOf([tuned(66, -12)], [tuned(66, -3)]);
    expect(gained).toMatchObject([
      { note: 66, before: { standing: 'playable' }, after: { standing: 'good' }, wasWorked: true },
    ]);
    expect(spoiled).toEqual([]);
  });

  it('names a neighbour that was good and is not any more as spoiled', () => {
    const { gained, spoiled } = outcomeOf(
      [tuned(66, -12), tuned(68, 4)],
      [tuned(66, -3), tuned(68, 7)],
    );
    expect(notes(gained)).toEqual([66]);
    expect(spoiled).toMatchObject([{ note: 68, wasWorked: false }]);
  });

  it('leaves out notes that only moved a little and stand as they did', () => {
    const { gained, spoiled, unchanged } = outcomeOf(
      [tuned(66, -12), tuned(68, 1)],
      [tuned(66, -3), tuned(68, 3)],
    );
    expect([...notes(gained), ...notes(spoiled), ...notes(unchanged)]).toEqual([66]);
  });

  it('counts a note that was worked on by its worst partial, also within one step', () => {
    expect(notes(outcomeOf([tuned(66, -20)], [tuned(66, -14)]).gained)).toEqual([66]);
    expect(notes(outcomeOf([tuned(66, -14)], [tuned(66, -20)]).spoiled)).toEqual([66]);
    expect(notes(outcomeOf([tuned(66, 0, -14)], [tuned(66, 0, -20)]).spoiled)).toEqual([66]);
    expect(notes(outcomeOf([tuned(66, -14)], [tuned(66, -14.2)]).unchanged)).toEqual([66]);
  });

  it('counts a top note as spoiled whose octave the blows moved away, though it stands as before', () => {
    const { gained, spoiled } = outcomeOf([tuned(87, 1, -1)], [tuned(87, 1, -7)], [87]);
    expect([notes(gained), notes(spoiled)]).toEqual([[], [87]]);
    expect(spoiled).toMatchObject([
      { after: { standing: 'good' }, madeWorse: [{ partial: 'octave', before: -1, now: -7 }] },
    ]);
  });

  it('does not hold the octave of a top note against it that was as far off before', () => {
    const { spoiled, unchanged } = outcomeOf([tuned(87, 1, 39)], [tuned(87, 1, 40)], [87]);
    expect([notes(spoiled), notes(unchanged)]).toEqual([[], [87]]);
  });
});
