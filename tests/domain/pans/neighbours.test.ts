import { describe, expect, it } from 'vitest';
import { notesOf } from '../../../src/domain/pans/layout';
import { builtInLayouts } from '../../../src/domain/pans/layouts/built-in-layouts';
import { doubleSecond } from '../../../src/domain/pans/layouts/double-second';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { sixBassB } from '../../../src/domain/pans/layouts/six-bass-b';
import { neighboursOf, neighboursOn } from '../../../src/domain/pans/neighbours';
import { noteName, parseNote } from '../../../src/domain/tuning/note-names';
import { midiNote } from '../../../src/domain/tuning/units';

const namesBeside = (layout: typeof lowCLead, name: string): readonly string[] =>
  neighboursOf(layout, parseNote(name) ?? midiNote(0)).map(({ note }) => noteName(note));

describe('the neighbours of a note', () => {
  // On a lead in fourths and fifths a note lies between its fourth and its fifth, outside its octave.
  it('on the rim of a lead are its fourth, its fifth and its octave', () => {
    for (const [note, beside] of [
      ['C4', ['C5', 'F4', 'G4']],
      ['F#4', ['B4', 'C#4', 'F#5']],
    ] as const) {
      expect([...namesBeside(lowCLead, note)].sort()).toEqual(beside);
    }
  });

  it('inside a lead reach outwards and inwards', () => {
    const beside = namesBeside(lowCLead, 'C5');
    for (const name of ['C4', 'F5', 'G5', 'C6']) expect(beside).toContain(name);
  });

  it('are mutual, with the same border from both sides', () => {
    for (const { layout } of builtInLayouts) {
      for (const drum of layout.drums) {
        const beside = neighboursOn(drum.notes);
        for (const [note, neighbours] of beside) {
          for (const { note: other, border } of neighbours) {
            expect(beside.get(other)).toContainEqual({ note, border });
          }
        }
      }
    }
  });

  it('are on the same drum', () => {
    const left = new Set(doubleSecond.drums[0]?.notes.map(({ note }) => note));
    for (const note of left) {
      const beside = neighboursOf(doubleSecond, note);
      expect(beside.length).toBeGreaterThan(1);
      expect(beside.every((neighbour) => left.has(neighbour.note))).toBe(true);
    }
  });

  it('of three bass notes are the two others', () => {
    for (const note of notesOf(sixBassB)) expect(neighboursOf(sixBassB, note)).toHaveLength(2);
  });

  it('of a note that is not there are none', () => {
    expect(neighboursOf(lowCLead, midiNote(20))).toEqual([]);
  });
});
