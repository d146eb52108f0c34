import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import type { CardSettings } from '../../../src/domain/rack/card-settings';
import {
  type PanRecords,
  type RackRecord,
  recordId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { hertz, instant } from '../../../src/domain/tuning/units';
import { createRecordTurns } from '../../../src/state/keeping/record-turns';
import { panAtAGlance } from '../../../src/state/pan/pan-at-a-glance';
import { createPanModel } from '../../../src/state/pan/pan-model';
import { createResultsModel } from '../../../src/state/pan/results-model';
import { panWith } from '../../browser/seeded-pans';
import { benchReading, blowsSample } from '../../domain/rounds/bench-sample';
import { startSample } from '../../domain/rounds/round-sample';
import { sampleErasure, samplePan } from '../../storage/rack/rack-sample';
import { memoryPanStore } from '../memory-pan-store';

const usual: CardSettings = { a4: hertz(440), reference: 'band', limits: usualTolerances };

async function rackWith(records: readonly RackRecord[]) {
  const memory = memoryPanStore();
  await memory.store.keep(records);
  const judging = signal(usual);
  const results = createResultsModel({ store: memory.store, judging });
  const loaded = await memory.store.pan(samplePan);
  if (loaded.kind !== 'loaded') throw new Error(loaded.trouble);
  return { memory, judging, results, records: loaded.value };
}

const readyIn = (model: ReturnType<typeof createResultsModel>) => {
  const view = model.view.value;
  if (view.kind !== 'open') throw new Error(view.kind);
  return view;
};
const readAll = async (model: ReturnType<typeof createResultsModel>, records: PanRecords) =>
  model.read(records, records.rounds);

describe('the results of rounds', () => {
  it('come with the readings they were made from, one for each round that was asked for', async () => {
    const { results, records } = await rackWith(
      panWith({}, [{ off: { 62: { fundamental: -16 } } }, { day: 30 }]),
    );
    expect(results.view.value.kind).toBe('loading');
    await readAll(results, records);
    const [first, second] = records.rounds.map(roundOf);
    const ready = readyIn(results);
    expect([...ready.results.keys()]).toEqual([first, second]);
    if (!first || !second) throw new Error('no rounds');
    expect(ready.readings.get(first)).toHaveLength(29);
    expect(ready.results.get(first)?.worst.map(({ note }) => note)).toEqual([62]);
    expect(ready.results.get(second)?.worst).toEqual([]);
  });

  it('are judged anew when the settings change, without reading again', async () => {
    const { results, records, judging, memory } = await rackWith(panWith({}, [{ shift: 8 }]));
    await readAll(results, records);
    const [round] = records.rounds.map(roundOf);
    if (!round) throw new Error('no round');
    expect(readyIn(results).results.get(round)?.reference).toBe('band');
    memory.trouble.now = 'failed';
    judging.value = { ...usual, reference: 'pan' };
    const judged = readyIn(results).results.get(round);
    expect(judged?.reference).toBe('pan');
    expect(judged?.standings.good).toBe(29);
  });

  it('leave erased readings out', async () => {
    const all = panWith({}, [{ off: { 62: { fundamental: -16 } } }]);
    const bad = all.find((record) => record.kind === 'reading' && record.note === 62);
    const { results, records } = await rackWith([...all, sampleErasure('gone', bad?.id ?? '')]);
    await readAll(results, records);
    const [result] = readyIn(results).results.values();
    expect(result?.worst).toEqual([]);
    expect(result?.standings.unread).toBe(1);
  });

  it('say what is wrong when they cannot be read, and come once they can', async () => {
    const { results, records, memory } = await rackWith(panWith({}, [{}]));
    memory.trouble.now = 'failed';
    await readAll(results, records);
    expect(results.view.value).toEqual({ kind: 'trouble', trouble: 'failed' });
    memory.trouble.now = null;
    await readAll(results, records);
    expect(readyIn(results).results.size).toBe(1);
  });

  it('of what was asked for last are shown, whichever answer comes last', async () => {
    const { results, records } = await rackWith(panWith({}, [{}, { day: 30 }]));
    const [first, second] = records.rounds;
    if (!first || !second) throw new Error('no rounds');
    await Promise.all([results.read(records, [first]), results.read(records, [second])]);
    expect([...readyIn(results).results.keys()]).toEqual([roundOf(second)]);
  });
});

describe('a pan at a glance', () => {
  const opened = async (records: readonly RackRecord[]) => {
    const memory = memoryPanStore();
    await memory.store.keep(records);
    const model = createPanModel({
      store: memory.store,
      clock: { now: () => instant(0) },
      identities: { next: () => recordId('next') },
      turns: createRecordTurns(),
      undo: { propose: () => undefined },
    });
    await model.open(samplePan);
    const view = model.view.value;
    if (view.kind !== 'open') throw new Error(view.kind);
    return panAtAGlance(view.pan, usual);
  };

  it('shows the newest finished round, not the one that is under way', async () => {
    const glance = await opened(
      panWith({}, [
        { off: { 62: { fundamental: -40 } } },
        { day: 30, off: { 62: { fundamental: -16 } } },
        { day: 31, isOpen: true, only: [62] },
      ]),
    );
    expect(glance.base?.round).toBe('round-30');
    expect(glance.notes.find(({ note }) => note === 62)?.standing).toBe('out');
    expect(glance.standings).toEqual({ good: 28, playable: 0, out: 1, avoid: 0, unread: 0 });
  });

  it('shows a note that was mended on the bench as it was measured there', async () => {
    const start = startSample({ day: 30 });
    const glance = await opened([
      ...panWith({}, [{ day: 30, off: { 62: { fundamental: -31 } } }]),
      blowsSample(start, 62, 100),
      benchReading(start, { note: 62, fundamental: -2 }, 120),
    ]);
    expect(glance.notes.find(({ note }) => note === 62)).toMatchObject({
      standing: 'good',
      takenIn: 'bench',
      work: 'measured',
    });
    expect(glance.worst).toEqual([]);
  });

  it('shows the marks of a pan that has not been heard', async () => {
    const glance = await opened(panWith({}, [], { 60: 'dead' }));
    expect(glance.base).toBeNull();
    expect(glance.notes.find(({ note }) => note === 60)?.reason).toEqual({
      kind: 'mark',
      mark: 'dead',
    });
    expect(glance.standings).toEqual({ good: 0, playable: 0, out: 0, avoid: 1, unread: 28 });
  });
});
