import { describe, expect, it } from 'vitest';
import { panId } from '../../../src/domain/records/rack-records';
import { midiNote } from '../../../src/domain/tuning/units';
import { createNoteModel } from '../../../src/state/pan/note-model';
import { panWith } from '../../browser/seeded-pans';
import { memoryPanStore } from '../memory-pan-store';

const pan = panId('pan-1');

async function noteModel() {
  const memory = memoryPanStore();
  await memory.store.keep(panWith({}, [{}, { day: 30 }]));
  return { memory, model: createNoteModel({ store: memory.store }) };
}

describe('one note through time', () => {
  it('has its readings of all rounds, and no other note’s', async () => {
    const { model } = await noteModel();
    expect(model.view.value.kind).toBe('loading');
    await model.read(pan, midiNote(62));
    const view = model.view.value;
    if (view.kind !== 'open') throw new Error(view.kind);
    expect(view.readings.map(({ note }) => note)).toEqual([62, 62]);
  });

  it('shows nothing of the note before while another one is read', async () => {
    const { model } = await noteModel();
    await model.read(pan, midiNote(62));
    const reading = model.read(pan, midiNote(64));
    expect(model.view.value.kind).toBe('loading');
    await reading;
    expect(model.view.value).toMatchObject({ kind: 'open', note: 64 });
  });

  it('says what is wrong when it cannot be read', async () => {
    const { memory, model } = await noteModel();
    memory.trouble.now = 'newer';
    await model.read(pan, midiNote(62));
    expect(model.view.value).toEqual({ kind: 'trouble', trouble: 'newer' });
  });
});
