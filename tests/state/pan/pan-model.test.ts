// One pan in two windows, which here are two models over one rack.
import { describe, expect, it, vi } from 'vitest';
import { instant } from '../../../src/domain/tuning/units';
import { createRecordTurns } from '../../../src/state/keeping/record-turns';
import { createPanModel } from '../../../src/state/pan/pan-model';
import { panFieldsSample } from '../../domain/records/pan-fields-sample';
import { sampleEnd, sampleReading, sampleRound } from '../../storage/rack/rack-sample';
import { memoryPanStore } from '../memory-pan-store';

const fields = panFieldsSample();

async function twoWindows() {
  const memory = memoryPanStore();
  const { store } = memory;
  let names = 0;
  let now = 1000;
  const ports = {
    store,
    clock: { now: () => instant(now++) },
    identities: { next: () => `id-${++names}` },
    turns: createRecordTurns(),
    undo: { propose: () => undefined },
  };
  const [one, other] = [createPanModel(ports), createPanModel(ports)];
  const { pan, kept } = one.add(fields, null);
  await kept;
  await Promise.all([one.open(pan), other.open(pan)]);
  return { one, other, pan, store };
}

type Model = ReturnType<typeof createPanModel>;
const shown = (model: Model) => {
  const view = model.view.value;
  if (view.kind !== 'open') throw new Error(view.kind);
  return view.pan;
};
const settle = () => new Promise((done) => setTimeout(done, 0));

describe('a pan that is edited in two windows', () => {
  it('has both edits when they are of different fields', async () => {
    const { one, other } = await twoWindows();
    const known = shown(other).records;
    await one.save({ owner: 'Ada' });
    await other.save({ maker: 'the yard' }, null, known);
    await settle();
    for (const model of [one, other]) {
      expect(shown(model).current.fields).toMatchObject({ owner: 'Ada', maker: 'the yard' });
      expect(shown(model).current.conflicts).toEqual([]);
    }
  });

  it('keeps both values of one field and asks, when the second began before the first was saved', async () => {
    const { one, other } = await twoWindows();
    const known = shown(other).records;
    await one.save({ owner: 'Ada' });
    await settle();
    await other.save({ owner: 'Bea' }, null, known);
    await settle();
    const [conflict] = shown(one).current.conflicts;
    expect(conflict?.field).toBe('owner');
    expect(conflict?.values.map(({ value }) => value)).toEqual(['Bea', 'Ada']);
  });

  it('is written over by an edit that was begun after the first was seen', async () => {
    const { one, other } = await twoWindows();
    await one.save({ owner: 'Ada' });
    await settle();
    await other.save({ owner: 'Bea' }, null, shown(other).records);
    await settle();
    expect(shown(one).current).toMatchObject({ fields: { owner: 'Bea' }, conflicts: [] });
  });
});

describe('what is written to a pan that is open', () => {
  it('is read by whoever did not write it, and not read back by whoever did', async () => {
    const { one, other, store } = await twoWindows();
    const read = vi.spyOn(store, 'pan');
    await one.save({ owner: 'Ada' });
    await settle();
    expect(read).toHaveBeenCalledTimes(1);
    expect(shown(one).current.fields.owner).toBe('Ada');
    expect(shown(other).current.fields.owner).toBe('Ada');
  });

  it('is read again where the pan was being read while it was written', async () => {
    const { one, pan, store } = await twoWindows();
    const { keep } = store;
    let write = () => {};
    const disk = new Promise<void>((done) => {
      write = done;
    });
    store.keep = (...all) => disk.then(() => keep(...all));
    const saved = one.save({ owner: 'Ada' });
    // The next screen opens the pan before the edit is on disk.
    await one.open(pan);
    expect(shown(one).current.fields.owner).toBe('');
    write();
    await saved;
    await settle();
    expect(shown(one).current.fields.owner).toBe('Ada');
  });

  it('is read once where what follows from it is not shown yet', async () => {
    const { one, store } = await twoWindows();
    const read = vi.spyOn(store, 'pan');
    const tuned = { who: 'Bea', done: '', remarks: '', nextVisit: null, startsBaseline: true };
    await one.keepVisit({ ...tuned, visitedAt: instant(500) });
    await settle();
    // Once here, and once in the other window.
    expect(read).toHaveBeenCalledTimes(2);
    expect(shown(one).records.visits).toHaveLength(1);
  });

  it('is not read for a reading of a round that goes on, which is not shown, but for one of the newest result', async () => {
    const { one, other, pan, store } = await twoWindows();
    const round = { ...sampleRound('round-1'), pan };
    await store.keep([round]);
    await settle();
    const read = vi.spyOn(store, 'pan');
    await store.keep([{ ...sampleReading('one', round), pan }]);
    await settle();
    expect(read).not.toHaveBeenCalled();
    await store.keep([{ ...sampleEnd('end-1', round), pan }]);
    await settle();
    read.mockClear();
    await store.keep([{ ...sampleReading('two', round), pan }]);
    await settle();
    expect(read).toHaveBeenCalledTimes(2);
    for (const model of [one, other]) expect(shown(model).readings).toHaveLength(2);
  });
});
