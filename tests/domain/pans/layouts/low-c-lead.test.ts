import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../../../src/domain/pans/check-layout';
import { type NotePlace, notesOf } from '../../../../src/domain/pans/layout';
import { lowCLead } from '../../../../src/domain/pans/layouts/low-c-lead';
import { parseNote } from '../../../../src/domain/tuning/note-names';

const places = lowCLead.drums.flatMap((drum) => drum.notes);
const ring = (name: NotePlace['ring']) => places.filter((place) => place.ring === name);
const clockOf = (name: string) => places.find((place) => place.note === parseNote(name))?.clock;

describe('the low-C lead', () => {
  it('has every semitone from C4 to E6 once', () => {
    expect(notesOf(lowCLead)).toEqual(Array.from({ length: 29 }, (_, k) => 60 + k));
  });

  it('has twelve outer, twelve middle and five centre notes', () => {
    expect([ring('outer'), ring('middle'), ring('centre')].map((notes) => notes.length)).toEqual([
      12, 12, 5,
    ]);
  });

  // Three published drawings and pages of tenors in fourths and fifths agree on the order;
  // C lies at the player, F just to its left.
  it.each(['outer', 'middle'] as const)('rises by a fourth clockwise in the %s ring', (name) => {
    const clockwise = [...ring(name)].sort((a, b) => a.clock - b.clock);
    clockwise.forEach((place, k) => {
      const next = clockwise[(k + 1) % clockwise.length];
      expect(((((next?.note ?? Number.NaN) - place.note) % 12) + 12) % 12).toBe(5);
    });
  });

  it.each([
    ['C4', 6],
    ['F4', 7],
    ['F#4', 12],
    ['G4', 5],
    ['C5', 6],
  ])('has %s at %d o’clock', (name, clock) => {
    expect(clockOf(name)).toBe(clock);
  });

  // An open model of a tenor names the centre notes clockwise from 12: C#6, E6, D6, C6, Eb6.
  it('has the centre notes in the published order, each near its own slot', () => {
    const fromTop = [...ring('centre')].sort(
      (a, b) => ((a.clock + 0.99) % 12) - ((b.clock + 0.99) % 12),
    );
    expect(fromTop.map((place) => place.note)).toEqual(
      ['C#6', 'E6', 'D6', 'C6', 'Eb6'].map(parseNote),
    );
    for (const place of ring('centre')) {
      const own = places.find((outer) => outer.note === place.note - 24);
      expect(Math.abs(place.clock - (own?.clock ?? Number.NaN))).toBeLessThanOrEqual(0.5);
    }
  });

  it('can be drawn: nothing missing, over the rim or over another note', () => {
    expect(checkLayout(lowCLead)).toEqual([]);
  });
});
