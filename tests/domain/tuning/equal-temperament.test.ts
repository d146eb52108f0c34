import teoria from 'teoria';
import { describe, expect, it } from 'vitest';
import { frequencyOf, nearestNote, standardA4 } from '../../../src/domain/tuning/equal-temperament';
import { parseNote } from '../../../src/domain/tuning/note-names';
import { centsBetween, hertz, type MidiNote, midiNote } from '../../../src/domain/tuning/units';

const everyPianoNote = Array.from({ length: 88 }, (_, k) => midiNote(21 + k));

/** Half of the last printed digit and a little: tables print three decimals. */
const tolerance = 0.001;

const noteCalled = (name: string): MidiNote => {
  const note = parseNote(name);
  if (note === null) throw new Error(`${name} is no note`);
  return note;
};

describe('equal temperament', () => {
  // Published table of twelve-tone equal temperament over A4 = 440 Hz (ISO 16:1975), Hz.
  it.each([
    ['B0', 30.868],
    ['E1', 41.203],
    ['Bb1', 58.27],
    ['C2', 65.406],
    ['F2', 87.307],
    ['G2', 97.999],
    ['C3', 130.813],
    ['F3', 174.614],
    ['F#3', 184.997],
    ['C4', 261.626],
    ['D4', 293.665],
    ['A4', 440],
    ['C5', 523.251],
    ['C6', 1046.502],
    ['C#6', 1108.731],
    ['E6', 1318.51],
    ['F#6', 1479.978],
  ])('gives %s the published frequency', (name, published) => {
    expect(Math.abs(frequencyOf(noteCalled(name)) - published)).toBeLessThanOrEqual(tolerance);
  });

  it.each([440, 442])(
    'agrees with a general-purpose music library on all 88 piano notes over A4 = %d Hz',
    (a4) => {
      for (const note of everyPianoNote) {
        const theirs = teoria.note.fromMIDI(note).fq(a4);
        expect(Math.abs(frequencyOf(note, hertz(a4)) - theirs), `MIDI ${note}`).toBeLessThan(
          tolerance,
        );
      }
    },
  );

  it('has A442 7.851 cents above A440, as published', () => {
    expect(centsBetween(standardA4, 442)).toBeCloseTo(7.851, 3);
  });

  it('finds each note again from its frequency, and from 49 cents beside it', () => {
    for (const note of everyPianoNote) {
      for (const off of [-49, 0, 49]) {
        expect(nearestNote(hertz(frequencyOf(note) * 2 ** (off / 1200)))).toBe(note);
      }
    }
  });
});
