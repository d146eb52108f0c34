// One pan in two windows, which here are two models over one rack.
import { describe, expect, it } from 'vitest';
import { instant } from '../../../src/domain/tuning/units';
import { createPanModel } from '../../../src/state/pan/pan-model';
import { panFieldsSample } from '../../domain/records/pan-fields-sample';
import { memoryPanStore } from '../memory-pan-store';

const fields = panFieldsSample();

async function twoWindows() {
  const { store } = memoryPanStore();
  let names = 0;
  let now = 1000;
  const ports = {
    store,
    clock: { now: () => instant(now++) },
    identities: { next: () => `id-${++names}` },
  };
  const [one, other] = [createPanModel(ports), createPanModel(ports)];
  const { pan, kept } = one.add(fields, null);
  await kept;
  await Promise.all([one.open(pan), other.open(pan)]);
  return { one, other };
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
