import { describe, expect, it } from 'vitest';
import type { PanLayout } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { ringPairs, ringPartnersOf } from '../../../src/domain/pans/ring-partners';
import { noteName, parseNote } from '../../../src/domain/tuning/note-names';
import { type MidiNote, midiNote } from '../../../src/domain/tuning/units';

const named = (name: string): MidiNote => {
  const note = parseNote(name);
  if (note === null) throw new Error(name);
  return note;
};
/** A lead of the same kind over other notes. */
const leadOver = (lowest: number, highest: number): PanLayout => {
  const [place] = lowCLead.drums.flatMap((drum) => drum.notes);
  if (!place) throw new Error('no notes');
  const notes = Array.from({ length: highest - lowest + 1 }, (_, k) => ({
    ...place,
    note: midiNote(lowest + k),
  }));
  return { ...lowCLead, drums: [{ name: 'lead', notes }] };
};
const partnersOf = (name: string, layout = lowCLead) =>
  ringPartnersOf(named(name), ringPairs(layout)).map(
    ({ own, other }) => `${own} with ${noteName(other.note)} ${other.partial}`,
  );

describe('ring partners', () => {
  it('of C4 on a low-C lead are C5, C6, G5, G4 and F4, where their partials meet', () => {
    // By arithmetic: 2 f(C4) = f(C5), 4 f(C4) = 2 f(C5) = f(C6), 3 f(C4) ≈ f(G5) ≈ 2 f(G4), 4 f(C4) ≈ 3 f(F4).
    expect(partnersOf('C4').sort()).toEqual([
      'double-octave with C5 octave',
      'double-octave with C6 fundamental',
      'double-octave with F4 twelfth',
      'octave with C5 fundamental',
      'twelfth with G4 octave',
      'twelfth with G5 fundamental',
    ]);
  });

  it('start with the octave', () => {
    expect(partnersOf('C4')[0]).toBe('octave with C5 fundamental');
    expect(partnersOf('C5').slice(0, 2).sort()).toEqual([
      'fundamental with C4 octave',
      'octave with C6 fundamental',
    ]);
  });

  it('over F#4 and D4 are the notes the trade names', () => {
    // Common practice, no source: over F#4 the octave is F#5 and the twelfth C#6; over D4 and D5, D5 and D6.
    expect(partnersOf('F#4')).toContain('octave with F#5 fundamental');
    expect(partnersOf('F#4')).toContain('twelfth with C#6 fundamental');
    expect(partnersOf('D5')).toContain('octave with D6 fundamental');
  });

  it('follow what the layout wants of the third partial', () => {
    const [drum] = lowCLead.drums;
    if (!drum) throw new Error('no drum');
    const layoutWith = (third: 'none' | 'double-octave'): PanLayout => ({
      ...lowCLead,
      drums: [{ ...drum, notes: drum.notes.map((place) => ({ ...place, third })) }],
    });
    expect(partnersOf('C4', layoutWith('none'))).toEqual(['octave with C5 fundamental']);
    expect(partnersOf('C4', layoutWith('double-octave')).join()).not.toContain('twelfth');
  });
});

describe('the octave pairs', () => {
  const pairsOf = (layout: PanLayout) =>
    ringPairs(layout)
      .filter(({ low, high }) => low.partial === 'octave' && high.partial === 'fundamental')
      .map(({ low, high }) => `${noteName(low.note)}–${noteName(high.note)}`);
  const pairs = (names: string, low: number) =>
    names.split(' ').map((name) => `${name}${low}–${name}${low + 1}`);

  // Both lists: common layout of leads in fourths and fifths (every name x4–x5, five more x5–x6).
  it('of a low-C lead are all twelve names and C, C#, D, Eb, E above', () => {
    const expected = [...pairs('C C# D Eb E F F# G Ab A Bb B', 4), ...pairs('C C# D Eb E', 5)];
    expect([...pairsOf(lowCLead)].sort()).toEqual(expected.sort());
    expect(pairsOf(lowCLead)[0]).toBe('E5–E6');
  });

  it('of a high-D lead are ten names from D, and seven above', () => {
    const expected = [...pairs('D Eb E F F# G Ab A Bb B', 4), ...pairs('C C# D Eb E F F#', 5)];
    expect([...pairsOf(leadOver(62, 90))].sort()).toEqual(expected.sort());
  });
});
