import { describe, expect, it } from 'vitest';
import { displayName, noteName, parseNote } from '../../../src/domain/tuning/note-names';
import { midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';

const anyMidiNote = fc.integer({ min: 0, max: 127 }).map(midiNote);

describe('names of notes', () => {
  // MIDI 60 = C4 and 69 = A4 by convention; spellings as pan players use them.
  it.each([
    [59, 'B3'],
    [60, 'C4'],
    [61, 'C#4'],
    [63, 'Eb4'],
    [66, 'F#4'],
    [68, 'Ab4'],
    [69, 'A4'],
    [70, 'Bb4'],
    [0, 'C-1'],
    [127, 'G9'],
  ])('calls MIDI %d %s', (midi, name) => {
    expect(noteName(midiNote(midi))).toBe(name);
  });

  it.each([
    [61, 'C♯4'],
    [70, 'B♭4'],
    [71, 'B4'],
  ])('shows MIDI %d as %s', (midi, name) => {
    expect(displayName(midiNote(midi))).toBe(name);
  });

  it('reads back every name it gives, plain and for the screen', () => {
    fc.assert(
      fc.property(anyMidiNote, (note) => {
        expect(parseNote(noteName(note))).toBe(note);
        expect(parseNote(displayName(note))).toBe(note);
      }),
    );
  });

  it.each([
    ['f#4', 66],
    ['Gb4', 66],
    ['Cb4', 59],
    ['B#3', 60],
    [' D5 ', 74],
  ])('reads "%s"', (name, midi) => {
    expect(parseNote(name)).toBe(midi);
  });

  it.each(['', 'H4', 'D', '5', 'D55', 'C##4', 'Cb-1', 'G#9', 'D5 flat'])(
    'takes "%s" for no note',
    (name) => {
      expect(parseNote(name)).toBeNull();
    },
  );

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const note = parseNote(text);
        expect(note === null || (note >= 0 && note <= 127)).toBe(true);
      }),
    );
  });
});
