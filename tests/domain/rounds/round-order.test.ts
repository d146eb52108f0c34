import { describe, expect, it } from 'vitest';
import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { octaveOrder } from '../../../src/domain/rounds/round-order';
import { noteName } from '../../../src/domain/tuning/note-names';
import { midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';

describe('the order of a guided round', () => {
  it('goes through the notes of one name from the highest down', () => {
    // "Octave pairs, highest first": common practice, no source.
    expect(octaveOrder(notesOf(lowCLead)).map(noteName).join(' ')).toBe(
      'E6 E5 E4 Eb6 Eb5 Eb4 D6 D5 D4 C#6 C#5 C#4 C6 C5 C4 ' +
        'B5 B4 Bb5 Bb4 A5 A4 Ab5 Ab4 G5 G4 F#5 F#4 F5 F4',
    );
  });

  it('is the same for the same notes in any order, names each once, and puts no octave after its lower note', () => {
    const notes = fc.uniqueArray(fc.integer({ min: 23, max: 91 }).map(midiNote), { minLength: 1 });
    fc.assert(
      fc.property(notes, (all) => {
        const order = octaveOrder(all);
        expect([...order].sort((a, b) => a - b)).toEqual([...all].sort((a, b) => a - b));
        expect(octaveOrder([...all, ...all].reverse())).toEqual(order);
        for (const [k, note] of order.entries()) {
          const octave = order.indexOf(midiNote(note + 12));
          expect(octave).toBeLessThan(k);
        }
      }),
    );
  });
});
