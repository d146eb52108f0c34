// A file that says something else than what is kept: nothing stored changes without a word.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, it } from 'vitest';
import type { CheckedBackup } from '../../../src/domain/ports/backup-files';
import type { BackupPart } from '../../../src/domain/records/backup/backup-format';
import { BackupWriter } from '../../../src/domain/records/backup/backup-writer';
import { noEffects } from '../../../src/domain/records/merging/file-effects';
import { type Attachment, panId, type RackRecord } from '../../../src/domain/records/rack-records';
import { sealed } from '../../../src/domain/records/record-digest';
import { backupFiles } from '../../../src/storage/backup/backup-files';
import { Database } from '../../../src/storage/database/database';
import { IndexedDbPanStore } from '../../../src/storage/rack/indexed-db-pan-store';
import { RackChanges } from '../../../src/storage/rack/rack-changes';
import {
  at,
  sampleAttachment,
  sampleCard,
  sampleEdit,
  sampleErasure,
  sampleMark,
  samplePan,
  sampleReading,
  sampleRound,
} from '../rack/rack-sample';

const otherPan = panId('pan-2');
const round = sampleRound('round-1');
const edit = sealed(sampleEdit('edit-1', 'Heron'));
const reading = sealed(sampleReading('reading-1', round, 60));
const sound = sampleAttachment('sound-1', 'sound', 900);

const fileOf = (records: readonly RackRecord[], attachments: readonly Attachment[] = []): File => {
  const parts: BackupPart[] = [
    ...records.map((record) => ({ kind: 'record', record }) as const),
    ...attachments.map((attachment) => ({ kind: 'attachment', attachment }) as const),
  ];
  const writer = new BackupWriter();
  const begin = writer.begin({ made: at(0), app: '0.1.0', pans: 1 });
  return new File([begin, ...parts.map((part) => writer.add(part)), writer.end()], 'rack.json');
};

function phone() {
  globalThis.indexedDB = new IDBFactory();
  const database = new Database();
  const changes = new RackChanges();
  const clock = { now: () => at(0) };
  const backups = backupFiles({ database, changes, clock, appVersion: '0.1.0' });
  const checked = async (file: File): Promise<CheckedBackup> => {
    const check = await backups.check(file);
    if (check.kind !== 'fine') throw new Error(check.why);
    return check.backup;
  };
  const takeIn = async (file: File) => {
    const taken = await backups.takeIn(await checked(file));
    if (taken.kind !== 'taken-in') throw new Error(taken.trouble);
    return taken;
  };
  const stored = (store: 'readings' | 'pan-edits' | 'attachments' | 'marks', id: string) =>
    database.use((connection) => connection.get(store, id));
  const put = (store: 'readings', row: unknown) =>
    database.use((connection) => connection.put(store, row));
  return { store: new IndexedDbPanStore(database, changes), backups, checked, takeIn, stored, put };
}

let mine: ReturnType<typeof phone>;
beforeEach(async () => {
  mine = phone();
  await mine.store.keep([edit, round, reading], [sound]);
});

describe('an entry of a file that says something else than the one of its name that is kept', () => {
  const moved = sealed({ ...sampleReading('reading-1', round, 60), pan: otherPan });
  const longer = sealed({ ...sampleReading('reading-1', round, 61), later: 'x'.repeat(500) });

  it.each([
    ['of another pan', moved],
    ['longer', longer],
    ['older, without a digest', { ...sampleReading('reading-1', round, 72) }],
  ])('stays beside it, and is named: one that is %s', async (_, record) => {
    const file = fileOf([record]);
    const named = [{ id: 'reading-1', pan: samplePan, kind: 'reading' }];
    expect((await mine.checked(file)).effects).toMatchObject({
      differing: named,
      differingCount: 1,
    });
    expect(await mine.takeIn(file)).toMatchObject({
      added: { records: 0, attachments: 0 },
      pans: [],
      differing: named,
    });
    expect(await mine.stored('readings', 'reading-1')).toEqual(reading);
  });

  it('takes its place when the user says so, and the cards of both pans are counted anew', async () => {
    await mine.store.keepCard(sampleCard(), (await panOf(mine)).value);
    const { differing } = await mine.takeIn(fileOf([moved]));
    await mine.backups.settle(differing[0]?.key ?? '', 'theirs');
    expect(await mine.stored('readings', 'reading-1')).toEqual(moved);
    const cards = await mine.store.cards();
    expect(cards.kind === 'loaded' && [...cards.value.stale].sort()).toEqual([samplePan, otherPan]);
    const size = await mine.store.size();
    expect(size.kind === 'loaded' && size.value.readings).toBe(1);
    // What was in place before is asked about no more, and can come back with its own backup.
    expect((await mine.takeIn(fileOf([reading]))).differing).toEqual([]);
  });

  it('is not asked about again once the user has kept what was here', async () => {
    const { differing } = await mine.takeIn(fileOf([longer]));
    await mine.backups.settle(differing[0]?.key ?? '', 'yours');
    expect((await mine.takeIn(fileOf([longer]))).differing).toEqual([]);
    expect(await mine.stored('readings', 'reading-1')).toEqual(reading);
  });

  it('is kept with the others of its name, in whatever order files come, and goes out with them', async () => {
    await mine.takeIn(fileOf([longer, moved]));
    const made = await mine.backups.make({ kind: 'rack' });
    if (made.kind !== 'made') throw new Error(made.trouble);
    const next = phone();
    const taken = await next.takeIn(made.file as File);
    expect(taken.differing.map(({ id }) => id)).toEqual(['reading-1', 'reading-1']);
    expect(await next.stored('readings', 'reading-1')).toEqual(reading);
  });

  it('is a sound or a photo as well', async () => {
    const other = { ...sound, bytes: new Uint8Array(2000).fill(7) };
    expect(await mine.takeIn(fileOf([], [other]))).toMatchObject({
      differing: [{ id: 'sound-1', kind: 'sound' }],
    });
    expect(await mine.stored('attachments', 'sound-1')).toMatchObject({ attachment: sound });
  });
});

describe('an entry that is damaged', () => {
  it('is left out of a file where its digest tells so, though its line is whole', async () => {
    const changed = { ...sealed(sampleMark('mark-1')), note: 99 } as unknown as RackRecord;
    const { report } = await mine.checked(fileOf([edit, changed]));
    expect(report.leftOut).toMatchObject([{ why: 'altered' }]);
    await mine.takeIn(fileOf([edit, changed]));
    expect(await mine.stored('marks', 'mark-1')).toBeUndefined();
  });

  it('gives way to a whole one where it is the one that is kept, be it the longer of the two', async () => {
    await mine.put('readings', { ...reading, note: 99, later: 'x'.repeat(500) });
    expect(await mine.takeIn(fileOf([reading]))).toMatchObject({ healed: 1, differing: [] });
    expect(await mine.stored('readings', 'reading-1')).toEqual(reading);
  });
});

describe('before a file is taken in', () => {
  it('what it takes out, and which pans it takes off the rack, is told', async () => {
    const off = sealed({ ...edit, id: 'edit-2', fields: { isRemoved: true } } as typeof edit);
    const file = fileOf([sampleErasure('e-1', 'round-1'), sampleErasure('e-2', 'nothing'), off]);
    expect((await mine.checked(file)).effects).toMatchObject({
      erased: [{ kind: 'round', count: 1 }],
      hidden: [samplePan],
    });
    const own = await mine.backups.make({ kind: 'rack' });
    const { effects } = await mine.checked((own.kind === 'made' && own.file) as File);
    expect(effects).toEqual(noEffects);
  });

  it('it says what was taken out here and does not come back by itself', async () => {
    const own = await mine.backups.make({ kind: 'rack' });
    await mine.takeIn(fileOf([sampleErasure('e-1', 'edit-1')]));
    const { effects } = await mine.checked((own.kind === 'made' && own.file) as File);
    expect(effects.takenOut).toBe(1);
  });
});

async function panOf({ store }: ReturnType<typeof phone>) {
  const loaded = await store.pan(samplePan);
  if (loaded.kind !== 'loaded') throw new Error(loaded.trouble);
  return loaded;
}
