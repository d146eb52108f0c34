import { describe, expect, it } from 'vitest';
import { blowSetsOf, noteTraits } from '../../../src/domain/advice/blow-sets';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { type Blows, type LoggedBlows, recordId } from '../../../src/domain/records/rack-records';
import { midiNote } from '../../../src/domain/tuning/units';
import { type NoteSketch, readingSample } from '../rounds/round-sample';

const sketch = (fundamental: number, octave: number | null, third: number | null): NoteSketch => ({
  note: 66,
  fundamental,
  octave,
  third,
});
const before = readingSample(null, sketch(-12, -8, 3), 1);
const after = readingSample(null, sketch(-8, -6, -1), 3);
const logged: LoggedBlows = { place: 'long-ends', side: 'above', firmness: 'firm' };
const blows: Blows = {
  kind: 'blows',
  shape: 1,
  id: recordId('blows-1'),
  pan: before.pan,
  at: after.at,
  round: null,
  note: midiNote(66),
  logged,
  count: 6,
  before: before.id,
  after: after.id,
};

describe('a kept set of blows', () => {
  it('changed each partial by what lies between its two readings, against fixed targets', () => {
    const [set] = blowSetsOf([blows], [before, after]);
    // Fundamental −12 → −8; octave −12−8 → −8−6; third −12+3 → −8−1.
    expect(set?.change.map((value) => Math.round((value ?? 99) * 1000) / 1000)).toEqual([4, 6, 0]);
    expect(set).toMatchObject({ ...logged, note: 66, id: 'blows-1' });
  });

  it('is four times as strong with six firm blows as with the usual three light ones', () => {
    expect(blowSetsOf([blows], [before, after])[0]?.strength).toBe(4);
    expect(blowSetsOf([{ ...blows, count: null }], [before, after])[0]?.strength).toBe(2);
  });

  it('says nothing of an octave that may be a partner’s, or of a third of another kind', () => {
    const doubtful = readingSample(null, { ...sketch(-8, -6, -1), rival: 3 }, 3);
    expect(blowSetsOf([blows], [before, doubtful])[0]?.change[1]).toBeNull();
    const other = readingSample(null, { ...sketch(-8, -6, -1), thirdKind: 'twelfth' }, 3);
    expect(blowSetsOf([blows], [before, other])[0]?.change[2]).toBeNull();
    const missing = readingSample(null, sketch(-8, null, null), 3);
    expect(blowSetsOf([blows], [before, missing])[0]?.change.slice(1)).toEqual([null, null]);
  });

  it.each([
    ['nobody logged where', [{ ...blows, logged: null }], [before, after]],
    ['there was no reading after it', [{ ...blows, after: null }], [before, after]],
    ['a reading was erased', [blows], [after]],
    ['a reading is of another note', [blows], [before, { ...after, note: midiNote(67) }]],
  ])('teaches nothing if %s', (_, sets, readings) => {
    expect(blowSetsOf(sets, readings)).toEqual([]);
  });

  it('teaches nothing if the note walked', () => {
    const walking = readingSample(null, { note: 66, strikes: [0, -2, -4, -6, -8] }, 3);
    expect(blowSetsOf([blows], [before, walking])).toEqual([]);
  });
});

describe('the traits of a note', () => {
  it('are its ring and its size among the notes of the pan', () => {
    const traits = noteTraits(lowCLead);
    expect(traits.size).toBe(29);
    expect(traits.get(midiNote(60))?.ring).toBe('outer');
    expect(traits.get(midiNote(60))?.size).toBeGreaterThan(0.5);
    expect(traits.get(midiNote(88))?.size).toBeLessThan(-0.5);
  });
});
