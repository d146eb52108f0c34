import { describe, expect, it } from 'vitest';
import { recheckList, workSteps } from '../../../src/domain/bench/work-order';
import { notesOf } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { neighboursOf } from '../../../src/domain/pans/neighbours';
import { type MidiNote, midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';

describe('the steps of work', () => {
  const order = [midiNote(76), midiNote(64), midiNote(66)];
  const steps = workSteps(lowCLead, order);

  it('work on each note in the given order', () => {
    expect(steps.filter(({ kind }) => kind === 'work').map(({ note }) => note)).toEqual(order);
  });

  it('check every other note that may have moved once, after the last work that may have moved it', () => {
    const checks = steps.flatMap((step) => (step.kind === 'check' ? [step] : []));
    expect(new Set(checks.map(({ note }) => note)).size).toBe(checks.length);
    for (const { note, because } of checks) {
      expect(because.length).toBeGreaterThan(0);
      const at = steps.findIndex((step) => step.kind === 'check' && step.note === note);
      const before = steps.slice(0, at).findLast(({ kind }) => kind === 'work');
      expect(before?.note).toBe(because.at(-1));
    }
  });

  it('come to every disturbed note afterwards, by work or by a check', () => {
    const aNote = fc.constantFrom(...notesOf(lowCLead));
    fc.assert(
      fc.property(fc.uniqueArray(aNote, { maxLength: 6 }), (notes) => {
        const all = workSteps(lowCLead, notes);
        all.forEach((step, k) => {
          if (step.kind !== 'work') return;
          const later = new Set(all.slice(k + 1).map(({ note }) => note));
          for (const { note } of recheckList(lowCLead, step.note)) {
            expect(later.has(note)).toBe(true);
          }
        });
      }),
      { numRuns: 20 },
    );
  });

  it('are none for no notes, and take a note named twice once', () => {
    expect(workSteps(lowCLead, [])).toEqual([]);
    const twice: readonly MidiNote[] = [midiNote(66), midiNote(66)];
    expect(workSteps(lowCLead, twice).filter(({ kind }) => kind === 'work')).toHaveLength(1);
  });
});

describe('what is checked after work on a note', () => {
  const list = recheckList(lowCLead, midiNote(66));

  it('is its neighbours, the longest border first, then its ring partners', () => {
    const neighbours = neighboursOf(lowCLead, midiNote(66)).map(({ note }) => note);
    expect(list.slice(0, neighbours.length).map(({ note }) => note)).toEqual(neighbours);
    expect(list.slice(neighbours.length).every(({ kind }) => kind === 'ring-partner')).toBe(true);
  });

  it('has the octave above and the twelfth above, whose fundamentals sound along', () => {
    const notes = list.map(({ note }) => note);
    // F#4 + 12 = F#5; + 19 = C#6 (partial 3 of F#4).
    expect(notes).toContain(78);
    expect(notes).toContain(85);
  });
});
