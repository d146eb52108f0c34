import { describe, expect, it } from 'vitest';
import type { NotePlace } from '../../../../src/domain/pans/layout';
import { builtInLayouts } from '../../../../src/domain/pans/layouts/built-in-layouts';
import { midiNote } from '../../../../src/domain/tuning/units';
import { edgeOf, letterRows, roomForLetters } from '../../../../src/ui/parts/drawing/letter-room';
import { columnsFor } from '../../../../src/ui/parts/drawing/pan-drawing-geometry';

const place = (along: number, across: number, clock = 0): NotePlace => ({
  note: midiNote(60),
  ring: 'outer',
  clock,
  radius: 0.5,
  along,
  across,
});

describe('letters in the oval of a note', () => {
  it('are as large as the oval has room for, whichever way it is turned', () => {
    const wide = roomForLetters(place(0.2, 0.1), '−28', letterRows.lower);
    const small = roomForLetters(place(0.1, 0.05), '−28', letterRows.lower);
    const high = roomForLetters(place(0.2, 0.1, 3), '−28', letterRows.lower);
    expect(wide).toBeGreaterThan(2 * small);
    expect(high).not.toBeCloseTo(wide, 1);
    expect(roomForLetters(place(0.1, 0.2, 3), '−28', letterRows.lower)).toBeCloseTo(wide, 6);
    expect(roomForLetters(place(0.2, 0.1), '8ve −28', letterRows.lower)).toBeLessThan(wide);
  });

  it('have 12 units for a number of two digits with its sign on every note of every layout', () => {
    const rooms = builtInLayouts.flatMap(({ layout }) => {
      const columns = columnsFor(layout);
      return layout.drums.flatMap(({ notes }) =>
        notes.map((each) => roomForLetters(each, '−28', letterRows.lower, columns) / columns),
      );
    });
    expect(rooms.length).toBeGreaterThan(300);
    expect(Math.min(...rooms)).toBeGreaterThanOrEqual(12);
  });

  it('end where the oval does', () => {
    expect(edgeOf(place(0.2, 0.1), 0)).toBeCloseTo(32, 9);
    expect(edgeOf(place(0.2, 0.1), Math.PI / 2)).toBeCloseTo(16, 9);
    expect(edgeOf(place(0.2, 0.1, 3), 0)).toBeCloseTo(16, 9);
  });
});
