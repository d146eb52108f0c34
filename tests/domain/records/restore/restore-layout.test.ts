import { describe, expect, it } from 'vitest';
import { mirrorDrum, turnDrum } from '../../../../src/domain/pans/edit-drums';
import { addNote, noteToAdd } from '../../../../src/domain/pans/edit-layout';
import type { PanLayout } from '../../../../src/domain/pans/layout';
import { builtInLayouts } from '../../../../src/domain/pans/layouts/built-in-layouts';
import { restoreRecord } from '../../../../src/domain/records/restore/restore-record';

const editWith = (layout: PanLayout) => ({
  shape: 1,
  id: 'edit-1',
  pan: 'pan-1',
  at: 1,
  kind: 'pan-edit',
  fields: { layout },
  replaces: [],
});

describe('a pan’s own copy of a layout', () => {
  it.each(builtInLayouts.map(({ layout }) => layout))('is restored unchanged: $name', (layout) => {
    const record = editWith(layout);
    expect(restoreRecord(record)).toEqual({ kind: 'restored', record, repairs: [] });
  });

  it.each(builtInLayouts.map(({ layout }) => layout))(
    'is restored unchanged after editing: $name',
    (layout) => {
      let edited = layout;
      for (let hours = 0.5; hours < 12; hours += 3.7) edited = turnDrum(edited, 0, hours);
      edited = mirrorDrum(turnDrum(edited, 0, -11.5), 0);
      const added = addNote(edited, 0, noteToAdd(edited));
      for (const each of [edited, ...('layout' in added ? [added.layout] : [])]) {
        const record = editWith(each);
        expect(restoreRecord(record)).toEqual({ kind: 'restored', record, repairs: [] });
      }
    },
  );
});
