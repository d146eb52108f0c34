import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../../src/domain/pans/check-layout';
import {
  addDrum,
  mirrorDrum,
  removeDrum,
  swapDrums,
  turnDrum,
} from '../../../src/domain/pans/edit-drums';
import {
  addNote,
  drumOf,
  moveNote,
  moveToDrum,
  noteToAdd,
  placeOfNote,
  removeNote,
  renameNote,
  setOffset,
  setThird,
  withoutDoubts,
} from '../../../src/domain/pans/edit-layout';
import type { EditResult } from '../../../src/domain/pans/edit-result';
import { notesOf, type PanLayout } from '../../../src/domain/pans/layout';
import { doubleSecond } from '../../../src/domain/pans/layouts/double-second';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { emptyLayout } from '../../../src/domain/pans/layouts/unplaced-layouts';
import { mirrored } from '../../../src/domain/pans/mirrored';
import { furthestRadius, outlineOf } from '../../../src/domain/pans/note-outline';
import { cents, midiNote } from '../../../src/domain/tuning/units';
import * as fc from '../../properties';

const c4 = midiNote(60);
const anyPlace = {
  ring: 'outer',
  clock: 6,
  radius: 0.5,
  along: 0.2,
  across: 0.2,
} as const;
const layoutIn = (result: EditResult): PanLayout => {
  if (result.kind === 'refused') throw new Error(result.why);
  return result.layout;
};

describe('editing a layout', () => {
  it('renames a note and leaves its place, but not what was set for the old note', () => {
    const tuned = setOffset(setThird(lowCLead, c4, 'twelfth'), c4, cents(3));
    const renamed = layoutIn(renameNote(tuned, c4, midiNote(59)));
    expect(placeOfNote(renamed, c4)).toBeNull();
    expect(placeOfNote(renamed, midiNote(59))).toEqual({ ...placeOfNote(lowCLead, c4), note: 59 });
  });

  it('refuses a note that the pan has already, and one it does not have', () => {
    expect(renameNote(lowCLead, c4, midiNote(61))).toEqual({ kind: 'refused', why: 'doubled' });
    expect(renameNote(lowCLead, midiNote(20), c4)).toEqual({ kind: 'refused', why: 'unknown' });
    expect(addNote(lowCLead, 0, c4)).toEqual({ kind: 'refused', why: 'doubled' });
    expect(addNote(lowCLead, 1, midiNote(59))).toEqual({ kind: 'refused', why: 'unknown' });
  });

  it('moves a note freely within the rim, and no farther', () => {
    const moved = placeOfNote(moveNote(lowCLead, c4, { clock: 3.2, radius: 0.5 }), c4);
    expect(moved).toMatchObject({ clock: 3.2, radius: 0.5, ring: 'middle' });
    const far = placeOfNote(moveNote(lowCLead, c4, { clock: 15, radius: 9 }), c4);
    expect(far?.clock).toBe(3);
    expect(far?.ring).toBe('outer');
  });

  it('does not call a note over the rim that was pushed against it, at whatever hour', () => {
    const over = Array.from({ length: 1_200 }, (_, k) => (k + 1) / 100).filter((clock) =>
      checkLayout(moveNote(doubleSecond, midiNote(54), { clock, radius: 1 })).some(
        ({ kind }) => kind === 'over-rim',
      ),
    );
    expect(over).toEqual([]);
  });

  it('keeps the outline of every oval within the rim, touching it at its furthest', () => {
    const half = fc.double({ min: 0.02, max: 0.7, noNaN: true });
    fc.assert(
      fc.property(half, half, (one, other) => {
        const size = { along: Math.max(one, other), across: Math.min(one, other) };
        const place = {
          note: c4,
          ring: 'outer',
          clock: 6,
          radius: furthestRadius(size),
          ...size,
        } as const;
        const reach = Math.max(...outlineOf(place).map(([x, y]) => Math.hypot(x, y)));
        // The outline is looked at in 48 points, so that it may seem to end a little short of the rim.
        expect(reach).toBeLessThanOrEqual(1 + 1e-9);
        expect(reach).toBeGreaterThan(0.985);
      }),
    );
  });

  it('turns a drum, once round back to where it was', () => {
    const turned = turnDrum(lowCLead, 0, 0.5);
    expect(placeOfNote(turned, c4)?.clock).toBe(6.5);
    expect(placeOfNote(turnDrum(turned, 0, 11.5), c4)?.clock).toBe(6);
    expect(turnDrum(lowCLead, 7, 1)).toEqual(lowCLead);
  });

  it('mirrors one drum and leaves the other', () => {
    const result = mirrorDrum(doubleSecond, 0);
    expect(placeOfNote(result, midiNote(54))?.clock).toBeCloseTo(12 - 6.7, 9);
    expect(result.drums[1]).toEqual(doubleSecond.drums[1]);
  });

  it('adds a note where there is room: an empty pan is filled without overlaps', () => {
    const filled = Array.from({ length: 8 }, (_, k) => midiNote(50 + k)).reduce(
      (layout, note) => layoutIn(addNote(layout, 0, note)),
      emptyLayout,
    );
    expect(checkLayout(filled)).toEqual([]);
  });

  it('removes a note, and proposes it as the next one to add', () => {
    const without = removeNote(lowCLead, midiNote(70));
    expect(notesOf(without)).toHaveLength(28);
    expect(noteToAdd(without)).toBe(70);
    expect(noteToAdd(lowCLead)).toBe(89);
  });

  it('moves a note to another drum with all that was set for it', () => {
    const note = midiNote(54);
    const moved = layoutIn(moveToDrum(setThird(doubleSecond, note, 'none'), note, 1));
    expect(drumOf(moved, note)).toBe(1);
    const { along, across } = placeOfNote(doubleSecond, note) ?? {};
    expect(placeOfNote(moved, note)).toMatchObject({ third: 'none', along, across });
    expect(notesOf(moved)).toEqual(notesOf(doubleSecond));
  });

  it('lets two drums change places, which keep their names', () => {
    const swapped = swapDrums(doubleSecond, 0, 1);
    expect(swapped.drums.map(({ name }) => name)).toEqual(['left', 'right']);
    expect(swapped.drums[0]?.notes).toEqual(doubleSecond.drums[1]?.notes);
    expect(swapDrums(swapped, 1, 0)).toEqual(doubleSecond);
    expect(swapDrums(doubleSecond, 0, 5)).toBe(doubleSecond);
  });

  it('adds an empty drum with a name of its own, and takes away only empty ones', () => {
    const more = addDrum(doubleSecond);
    expect(more.drums[2]).toEqual({ name: '3', notes: [] });
    expect(removeDrum(more, 0)).toEqual({ kind: 'refused', why: 'not-empty' });
    expect(layoutIn(removeDrum(more, 2))).toEqual(doubleSecond);
    expect(removeDrum(emptyLayout, 0).kind).toBe('refused');
  });

  it('sets and takes back the wish for the third partial and the offset', () => {
    const set = setOffset(setThird(lowCLead, c4, 'double-octave'), c4, cents(-4));
    expect(placeOfNote(set, c4)).toMatchObject({ third: 'double-octave', offset: -4 });
    expect(setOffset(setThird(set, c4, null), c4, cents(0))).toEqual(lowCLead);
  });

  it('keeps the source when the doubts are settled', () => {
    const settled = withoutDoubts(doubleSecond);
    expect(settled.doubts).toBeUndefined();
    expect(settled.source).toBe(doubleSecond.source);
  });

  it('never throws and never changes the layout it was given', () => {
    const before = JSON.stringify(doubleSecond);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 127 }).map(midiNote),
        fc.integer({ min: 0, max: 127 }).map(midiNote),
        fc.integer({ min: -2, max: 4 }),
        fc.double({ noDefaultInfinity: true, noNaN: true, min: -50, max: 50 }),
        (note, other, drum, number) => {
          for (const result of [
            renameNote(doubleSecond, note, other),
            addNote(doubleSecond, drum, note),
            moveToDrum(doubleSecond, note, drum),
            removeDrum(doubleSecond, drum),
          ]) {
            const notes = result.kind === 'done' ? notesOf(result.layout) : [];
            expect(new Set(notes).size).toBe(notes.length);
          }
          const moved = moveNote(doubleSecond, note, { clock: number, radius: number });
          expect(checkLayout(moved).some(({ kind }) => kind === 'over-rim')).toBe(false);
          turnDrum(doubleSecond, drum, number);
          mirrorDrum(doubleSecond, drum);
          swapDrums(doubleSecond, drum, 1);
          removeNote(doubleSecond, note);
        },
      ),
    );
    expect(JSON.stringify(doubleSecond)).toBe(before);
  });
});

describe('a mirrored pan', () => {
  it('has left and right exchanged, each drum as in a mirror', () => {
    const mirror = mirrored(doubleSecond);
    expect(mirror.drums.map(({ name }) => name)).toEqual(['left', 'right']);
    expect(drumOf(mirror, midiNote(54))).toBe(1);
    expect(placeOfNote(mirror, midiNote(54))?.clock).toBeCloseTo(5.3, 9);
    expect(mirror.name).toBe('Double second, mirrored');
  });

  it('is the pan itself when it is mirrored again', () => {
    const twice = mirrored(mirrored(doubleSecond));
    expect([twice.id, twice.name]).toEqual([doubleSecond.id, doubleSecond.name]);
    for (const note of notesOf(doubleSecond)) {
      expect(placeOfNote(twice, note)?.clock).toBeCloseTo(
        placeOfNote(doubleSecond, note)?.clock ?? 0,
        9,
      );
      expect(drumOf(twice, note)).toBe(drumOf(doubleSecond, note));
    }
  });

  it('changes the sides of six drums and keeps far ones far, and turns a row of four round', () => {
    const of = (names: readonly string[]) =>
      mirrored({
        ...emptyLayout,
        drums: names.map((name, k) => ({
          name,
          notes: [{ ...anyPlace, note: midiNote(k) }],
        })),
      }).drums.map(({ notes }) => notes[0]?.note);
    expect(of(['far left', 'far right', 'near left', 'near right'])).toEqual([1, 0, 3, 2]);
    expect(of(['1', '2', '3', '4'])).toEqual([3, 2, 1, 0]);
    expect(of(['left', 'middle', 'right'])).toEqual([2, 1, 0]);
  });
});
