import { describe, expect, it, vi } from 'vitest';
import type { BackupFiles, CheckedBackup } from '../../../src/domain/ports/backup-files';
import type { FileHandout } from '../../../src/domain/ports/file-handout';
import { noEffects } from '../../../src/domain/records/merging/file-effects';
import { panId, type RackRecord, recordId } from '../../../src/domain/records/rack-records';
import { instant } from '../../../src/domain/tuning/units';
import { createBackupModel } from '../../../src/state/rack/backup-model';
import { asPan, panWith } from '../../browser/seeded-pans';
import { sampleEdit } from '../../storage/rack/rack-sample';
import { memoryPanStore } from '../memory-pan-store';

const file = { name: 'a file', size: 7 };
const heron = panWith({ name: 'Heron' }, [{}]);
const otter = asPan('otter', panWith({ name: 'Otter' }, [{}]));
const renamed = (id: string, name: string): RackRecord => ({
  ...sampleEdit(id, name),
  fields: { name },
  at: instant(sampleEdit(id, name).at + 60_000),
  replaces: [recordId('edit-1')],
});

/** A phone with `ours`, and a file that holds `theirs`. */
async function setUp(ours: readonly RackRecord[], theirs: readonly RackRecord[]) {
  const memory = memoryPanStore();
  if (ours.length > 0) await memory.store.keep(ours);
  const pans = [...new Set(theirs.map(({ pan }) => pan))];
  const backup = {
    file,
    isWhole: true,
    report: { leftOutCount: 2 },
    pans,
    contents: [],
    readings: 0,
    effects: { ...noEffects, takenOut: 3 },
  } as unknown as CheckedBackup;
  const files: BackupFiles = {
    make: vi.fn(async () => ({
      kind: 'made' as const,
      file,
      counts: { records: 1, attachments: 0 },
      contents: [],
      leftOut: 0,
    })),
    check: async () => ({ kind: 'fine', backup }),
    async takeIn() {
      const known = new Set(memory.records.map(({ id }) => id));
      const news = theirs.filter(({ id }) => !known.has(id));
      await memory.store.keep(theirs);
      return {
        kind: 'taken-in',
        added: { records: news.length, attachments: 0 },
        pans: [...new Set(news.map(({ pan }) => pan))],
        healed: 0,
        differing: [{ key: 'edit-1 x', id: 'edit-1', pan: panId('pan-1'), kind: 'pan-edit' }],
        differingCount: 1,
      };
    },
    settle: vi.fn(async () => ({ kind: 'kept' as const })),
  };
  const handout: FileHandout = {
    bestForm: () => 'text',
    textFile: () => file,
    dataFile: () => file,
    copy: () => Promise.resolve(true),
    handOut: async () => 'shared',
  };
  const set = vi.fn();
  const clock = { now: () => instant(5) };
  const model = createBackupModel({
    files,
    handout,
    store: memory.store,
    settings: { set },
    clock,
  });
  return { model, memory, files, set };
}

describe('a file that comes in', () => {
  it('is compared with the pans that are here before anything is taken in', async () => {
    const { model, memory } = await setUp(heron, [...heron, ...otter]);
    await model.check(file);
    const into = model.into.value;
    if (into.kind !== 'checked') throw new Error(into.kind);
    expect([...(into.checked.here ?? [])]).toEqual(['pan-1']);
    expect(memory.records).toHaveLength(heron.length);
  });

  it('is asked about also when nobody can say what is here', async () => {
    const { model, memory } = await setUp([], otter);
    memory.trouble.now = 'failed';
    await model.check(file);
    expect(model.into.value).toMatchObject({ kind: 'checked', checked: { here: null } });
  });

  it('tells which pans are new, which got something new, and what is to be settled', async () => {
    const { model } = await setUp(
      [...heron, renamed('edit-a', 'Blue heron')],
      [...heron, renamed('edit-b', 'Grey heron'), ...otter],
    );
    await model.check(file);
    await model.takeIn();
    expect(model.into.value).toMatchObject({
      kind: 'taken',
      added: { records: otter.length + 1 },
      leftOut: 2,
      pans: [
        { pan: 'pan-1', isNew: false, conflicts: ['name'] },
        { pan: 'otter', name: 'Otter', isNew: true, conflicts: [] },
      ],
    });
  });

  it('names what says something else than what is here, until the user has chosen', async () => {
    const { model, files } = await setUp(heron, otter);
    await model.check(file);
    await model.takeIn();
    const differing = [{ key: 'edit-1 x', id: 'edit-1', kind: 'pan-edit', name: 'Heron' }];
    expect(model.into.value).toMatchObject({ kind: 'taken', differing, takenOut: 3 });
    await model.settle('edit-1 x', 'yours');
    expect(files.settle).toHaveBeenCalledWith('edit-1 x', 'yours');
    expect(model.into.value).toMatchObject({ differing: [], differingCount: 1 });
  });

  it('is forgotten when its screen is left', async () => {
    const { model } = await setUp([], otter);
    await model.check(file);
    model.leave();
    expect(model.into.value.kind).toBe('idle');
    await model.takeIn();
    expect(model.into.value.kind).toBe('idle');
  });
});

describe('a file that goes out', () => {
  it('is made in the form that gets furthest, and counts as a backup once the whole rack is out', async () => {
    const { model, files, set } = await setUp(heron, []);
    await model.make({ kind: 'rack' });
    expect(files.make).toHaveBeenCalledWith({ kind: 'rack' }, expect.any(Function), 'text');
    expect(set).not.toHaveBeenCalled();
    await model.handOut();
    expect(model.out.value).toMatchObject({ kind: 'ready', handedOut: 'shared' });
    expect(set).toHaveBeenCalledTimes(1);
  });

  it('of one pan is no backup of the rack', async () => {
    const { model, set } = await setUp(heron, []);
    await model.make({ kind: 'pan', pan: panId('pan-1'), name: 'Heron' });
    await model.handOut();
    expect(set).not.toHaveBeenCalled();
  });
});
