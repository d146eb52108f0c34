import teoria from 'teoria';
import { describe, expect, it } from 'vitest';
import { noNeeds, pitchClassOf } from '../../../src/domain/knock-check/saved-tunes';
import { neededClasses, neededNotes, notesOfKey } from '../../../src/domain/knock-check/set-needs';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { noteName, parseNote } from '../../../src/domain/tuning/note-names';

const tonics = ['c', 'c#', 'd', 'eb', 'e', 'f', 'f#', 'g', 'ab', 'a', 'bb', 'b'];
/** Names as a general-purpose library spells them, also E♯ and B♯. */
const semitones: Readonly<Record<string, number>> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
const classOf = (name: string): number => {
  const signs = [...name.slice(1)].reduce((sum, sign) => sum + (sign === 'b' ? -1 : 1), 0);
  return pitchClassOf((semitones[name.charAt(0)] ?? Number.NaN) + signs);
};
const classes = (...names: string[]) =>
  names.map((name) => pitchClassOf(parseNote(`${name}4`) ?? 0));
const sorted = (values: Iterable<number>) => [...values].sort((a, b) => a - b);

describe('the notes of a major key', () => {
  it.each(tonics)('on %s are those of a general-purpose library (teoria)', (tonic) => {
    const theirs = teoria.note(tonic).scale('major').simple().map(classOf);
    expect(sorted(notesOfKey(pitchClassOf(classOf(tonic))))).toEqual(sorted(theirs));
  });
});

describe('what a set needs', () => {
  const [f, bFlat] = classes('F', 'Bb');
  const tune = { name: 'Slow one', notes: classes('C#', 'E') };

  it('in F and B♭ major is eight names of notes', () => {
    const needed = neededClasses(
      { ...noNeeds, keys: [f ?? pitchClassOf(0), bFlat ?? pitchClassOf(0)] },
      [],
    );
    expect(sorted(needed ?? [])).toEqual(sorted(classes('F', 'G', 'A', 'Bb', 'C', 'D', 'E', 'Eb')));
  });

  it('is every note of the pan when nothing was chosen', () => {
    expect(neededClasses(noNeeds, [tune])).toBeNull();
    expect(neededNotes(lowCLead, null)).toHaveLength(29);
  });

  it('adds tapped notes and saved tunes to the keys; a tune that is gone adds nothing', () => {
    const needs = { keys: [], tunes: ['Slow one', 'Lost one'], notes: classes('G') };
    expect(sorted(neededClasses(needs, [tune]) ?? [])).toEqual(sorted(classes('C#', 'E', 'G')));
  });

  it('is all octaves of a name on the pan', () => {
    const notes = neededNotes(lowCLead, new Set(classes('E')));
    expect(notes.map(noteName)).toEqual(['E4', 'E5', 'E6']);
  });
});
