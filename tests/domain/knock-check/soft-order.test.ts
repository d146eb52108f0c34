import { describe, expect, it } from 'vitest';
import { softOrder } from '../../../src/domain/knock-check/soft-order';
import { notesOf } from '../../../src/domain/pans/layout';
import { doubleSecond } from '../../../src/domain/pans/layouts/double-second';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { octaveOrder } from '../../../src/domain/rounds/round-order';
import { noteName } from '../../../src/domain/tuning/note-names';
import { midiNote } from '../../../src/domain/tuning/units';

const sorted = (notes: readonly number[]) => [...notes].sort((a, b) => a - b);
const point = (clock: number, radius: number, drum = 0) =>
  ({ kind: 'point', drum, clock, radius }) as const;

describe('the order of the soft round', () => {
  it('asks for every note of the pan once', () => {
    for (const impact of [
      null,
      point(2, 1),
      point(7, 0.1),
      { kind: 'note', note: midiNote(66) } as const,
    ]) {
      expect(sorted(softOrder(lowCLead, impact))).toEqual(sorted(notesOf(lowCLead)));
    }
    expect(sorted(softOrder(doubleSecond, point(3, 1, 1)))).toEqual(
      sorted([...new Set(notesOf(doubleSecond))]),
    );
  });

  it('begins with the note nearest to the place that was hit', () => {
    // On a lead in fourths and fifths the rim at 12 o'clock is F♯4, at 6 o'clock C4.
    expect(noteName(softOrder(lowCLead, point(12, 1))[0] ?? midiNote(0))).toBe('F#4');
    expect(noteName(softOrder(lowCLead, point(6, 1))[0] ?? midiNote(0))).toBe('C4');
    expect(softOrder(lowCLead, { kind: 'note', note: midiNote(70) })[0]).toBe(70);
  });

  it('goes to the opposite side before the rest, because the rim goes oval', () => {
    const names = softOrder(lowCLead, point(12, 1)).map(noteName);
    const opposite = names.indexOf('C4');
    const beside = ['Eb4', 'A4'].map((name) => names.indexOf(name));
    expect(names.indexOf('B4')).toBeLessThan(opposite);
    expect(names.indexOf('C#4')).toBeLessThan(opposite);
    for (const at of beside) expect(at).toBeGreaterThan(opposite);
  });

  it('is by distance alone where the middle was hit', () => {
    const names = softOrder(lowCLead, point(3, 0.05)).map(noteName);
    expect(names.slice(0, 5).sort()).toEqual(['C#6', 'C6', 'D6', 'E6', 'Eb6'].sort());
  });

  it('takes the drum that was hit before the others', () => {
    const [first, second] = doubleSecond.drums;
    const order = softOrder(doubleSecond, point(3, 1, 1));
    const count = second?.notes.length ?? 0;
    expect(sorted(order.slice(0, count))).toEqual(
      sorted(second?.notes.map(({ note }) => note) ?? []),
    );
    expect(first?.notes.length).toBe(order.length - count);
  });

  it('is the usual one where nobody knows the place, or the drum is not there', () => {
    expect(softOrder(lowCLead, null)).toEqual(octaveOrder(notesOf(lowCLead)));
    expect(softOrder(lowCLead, point(3, 1, 7))).toEqual(octaveOrder(notesOf(lowCLead)));
  });
});
