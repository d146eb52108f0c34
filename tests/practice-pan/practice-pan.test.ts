import { describe, expect, it } from 'vitest';
import { notesOf } from '../../src/domain/pans/layout';
import { noteName } from '../../src/domain/tuning/note-names';
import { createPracticePan } from '../../src/practice-pan/practice-pan';
import { anyNote, onlyStrike } from '../dsp/listen-to';
import { placed } from '../synthetic-sounds/sounds';

const sampleRate = 48000;
const pan = createPracticePan(29);
const notes = notesOf(pan.layout);

describe('the practice pan', () => {
  for (const note of notes) {
    it(`lets the ear find ${noteName(note)} and its hidden detunings`, () => {
      const samples = placed([{ at: 0.3, samples: pan.strike(note, 0.7, sampleRate) }], {
        sampleRate,
        seconds: 2,
      });
      const strike = onlyStrike(samples, sampleRate, { ...anyNote, notes });
      const truth = pan.truth(note);
      if (!truth) throw new Error('the note is missing');
      expect(noteName(strike.note)).toBe(noteName(note));
      expect(Math.abs(strike.fundamental.cents - truth.fundamentalCents)).toBeLessThan(0.5);
      const octaveError = Math.abs((strike.octave?.centsFromOwn ?? 99) - truth.octaveCents);
      expect(octaveError).toBeLessThan(1);
    });
  }

  it('hides the same detunings for the same seed, and others for another', () => {
    const again = createPracticePan(29);
    const other = createPracticePan(30);
    const all = (each: typeof pan) => notes.map((note) => each.truth(note)?.fundamentalCents);
    expect(all(again)).toEqual(all(pan));
    expect(all(other)).not.toEqual(all(pan));
  });

  it('is silent for a note it does not have', () => {
    const sound = pan.strike(notes[0] as never, 0.7, sampleRate);
    expect(sound.some((value) => value !== 0)).toBe(true);
    expect(pan.strike(20 as never, 0.7, sampleRate).some((value) => value !== 0)).toBe(false);
  });
});
