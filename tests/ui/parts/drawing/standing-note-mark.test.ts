import { describe, expect, it } from 'vitest';
import { standingOf } from '../../../../src/domain/reading/note-standing';
import { cents, midiNote } from '../../../../src/domain/tuning/units';
import type { Judged } from '../../../../src/domain/tuning/verdict';
import {
  standingLabel,
  standingNoteMark,
} from '../../../../src/ui/parts/drawing/standing-note-mark';

const note = (fundamental: number, octave = 0, third = 0): Judged => ({
  note: midiNote(62),
  fundamental: { cents: cents(fundamental) },
  octave: { centsFromOwn: cents(octave) },
  third: { kind: 'double-octave', centsFromOwn: cents(third) },
});
const markOf = (judged: Judged | null, mark: 'none' | 'dead' | 'buzzing' = 'none') =>
  standingNoteMark({ judged, ...standingOf({ judged, mark }) });
const labelOf = (judged: Judged | null, mark: 'none' | 'dead' = 'none') =>
  standingLabel('D4', standingOf({ judged, mark }));

describe('the mark of a note on the map', () => {
  it('is filled and says the fundamental in cents when the note is good', () => {
    expect(markOf(note(-3))).toEqual({ text: '−3', shape: 'filled', tone: 'true' });
    expect(markOf(note(0.2))).toEqual({ text: '0', shape: 'filled', tone: 'true' });
  });

  it('has another shape for each standing, and a sign for the direction', () => {
    expect(markOf(note(-9))).toEqual({ text: '−9', shape: 'outline', tone: 'low' });
    expect(markOf(note(16))).toEqual({ text: '+16', shape: 'half', tone: 'high' });
    expect(markOf(note(-47))).toEqual({ text: '−47', shape: 'crossed', tone: 'low' });
    expect(markOf(null)).toEqual({ text: '', shape: 'dotted', tone: 'plain' });
  });

  it('says which partial it is when it is not the fundamental', () => {
    expect(markOf(note(1, -18)).text).toBe('8ve −18');
    expect(markOf(note(1, 0, 30)).text).toBe('15th +30');
  });

  it('says what a person marked in a word', () => {
    expect(markOf(note(0), 'dead')).toEqual({ text: 'dead', shape: 'crossed', tone: 'stop' });
    expect(markOf(note(0), 'buzzing')).toEqual({ text: 'buzzing', shape: 'half', tone: 'stop' });
  });

  it('leaves the octave open while two lines are there', () => {
    const open = { ...note(1, 4), octaveRival: { centsFromOwn: cents(-6) } };
    expect(markOf(open)).toEqual({ text: '8ve ?', shape: 'filled', tone: 'plain' });
  });

  it('is said with the name, the fault and the standing', () => {
    expect(labelOf(note(-16))).toBe('D4: flat 16, out');
    expect(labelOf(note(1, 9))).toBe('D4: octave sharp 9, playable');
    expect(labelOf(note(1))).toBe('D4: good');
    expect(labelOf(null, 'dead')).toBe('D4: dead, avoid');
    expect(labelOf(null)).toBe('D4: not heard');
  });
});
