import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../../src/domain/pans/check-layout';
import type { NotePlace, PanLayout } from '../../../src/domain/pans/layout';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { midiNote } from '../../../src/domain/tuning/units';

const places = lowCLead.drums.flatMap((drum) => drum.notes);
const withPlaces = (notes: readonly NotePlace[]): PanLayout => ({
  ...lowCLead,
  drums: [{ name: 'lead', notes }],
});

describe('the check of a layout', () => {
  it('names a missing note', () => {
    expect(checkLayout(withPlaces(places.filter((place) => place.note !== 62)))).toEqual([
      { kind: 'missing', note: 62 },
    ]);
  });

  it('names a note that is there twice', () => {
    const twice = places.map((place) =>
      place.note === 62 ? { ...place, note: midiNote(61) } : place,
    );
    expect(checkLayout(withPlaces(twice))).toContainEqual({ kind: 'doubled', note: 61 });
  });

  it('names a note that reaches over the rim', () => {
    const outside = places.map((place) => (place.note === 60 ? { ...place, radius: 0.95 } : place));
    expect(checkLayout(withPlaces(outside))).toContainEqual({ kind: 'over-rim', note: 60 });
  });

  it('names two notes that lie over each other', () => {
    const over = places.map((place) => (place.note === 84 ? { ...place, radius: 0.45 } : place));
    expect(checkLayout(withPlaces(over))).toContainEqual({
      kind: 'overlap',
      note: 72,
      other: 84,
    });
  });

  it('notices a small note wholly inside a large one, whichever comes first', () => {
    const large = { ...(places[0] as NotePlace), radius: 0, along: 0.6, across: 0.6 };
    const small = {
      ...(places[1] as NotePlace),
      note: midiNote(61),
      radius: 0,
      along: 0.1,
      across: 0.1,
    };
    for (const pair of [
      [large, small],
      [small, large],
    ]) {
      expect(checkLayout(withPlaces(pair)).map(({ kind }) => kind)).toEqual(['overlap']);
    }
  });
});
