// A backup that is written and taken in by several batches, the next one read while the one before is kept.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, expect, it, vi } from 'vitest';
import type { CheckedBackup } from '../../../src/domain/ports/backup-files';
import { backupFiles } from '../../../src/storage/backup/backup-files';
import { Database } from '../../../src/storage/database/database';
import { IndexedDbPanStore } from '../../../src/storage/rack/indexed-db-pan-store';
import { RackChanges } from '../../../src/storage/rack/rack-changes';
import { at, sampleMark, samplePan } from '../rack/rack-sample';

const marks = 4500;

function newPhone() {
  globalThis.indexedDB = new IDBFactory();
  const database = new Database();
  const changes = new RackChanges();
  const clock = { now: () => at(0) };
  return {
    store: new IndexedDbPanStore(database, changes),
    backups: backupFiles({ database, changes, clock, appVersion: '0.1.0' }),
    ids: () => database.use((connection) => connection.getAllKeys('marks')),
  };
}
type Phone = ReturnType<typeof newPhone>;

async function largeBackup(): Promise<{ readonly phone: Phone; readonly backup: CheckedBackup }> {
  const phone = newPhone();
  const records = Array.from({ length: marks }, (_, n) => sampleMark(`mark-${n}`));
  expect(await phone.store.keep(records)).toEqual({ kind: 'kept' });
  const made = await phone.backups.make({ kind: 'rack' });
  if (made.kind !== 'made') throw new Error(made.trouble);
  expect(made.counts.records).toBe(marks);
  const check = await phone.backups.check(made.file);
  if (check.kind !== 'fine') throw new Error(check.why);
  return { phone, backup: check.backup };
}

afterEach(() => {
  vi.restoreAllMocks();
});

it('is whole on the other phone', async () => {
  const { phone, backup } = await largeBackup();
  const ids = await phone.ids();
  const empty = newPhone();
  expect(await empty.backups.takeIn(backup)).toEqual({
    kind: 'taken-in',
    added: { records: marks, attachments: 0 },
    pans: [samplePan],
    differing: [],
    differingCount: 0,
    healed: 0,
  });
  expect(await empty.ids()).toEqual(ids);
});

it('that stops in the middle keeps whole batches, tells of them, and is finished by taking it in again', async () => {
  const { backup } = await largeBackup();
  const phone = newPhone();
  const heard = vi.fn();
  phone.store.onChange(heard);
  const { put } = IDBObjectStore.prototype;
  let room = 3000;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    ...entry: Parameters<typeof put>
  ) {
    room -= 1;
    if (room < 0) throw new DOMException('full', 'QuotaExceededError');
    return put.apply(this, entry);
  });
  expect(await phone.backups.takeIn(backup)).toEqual({ kind: 'trouble', trouble: 'full' });
  const there = (await phone.ids()).length;
  expect(there).toBeGreaterThan(1000);
  expect(there).toBeLessThan(3000);
  expect(heard).toHaveBeenCalledTimes(1);
  expect(heard).toHaveBeenCalledWith({ pans: [samplePan], own: null });

  vi.restoreAllMocks();
  expect(await phone.backups.takeIn(backup)).toMatchObject({
    kind: 'taken-in',
    added: { records: marks - there },
  });
  expect(await phone.ids()).toHaveLength(marks);
});
