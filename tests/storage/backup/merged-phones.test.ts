// Phones that take in each other's files: in whatever order and however often, in the end all hold the same.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import type { BackupPart } from '../../../src/domain/records/backup/backup-format';
import { besideKey } from '../../../src/domain/records/merging/differing';
import { sealed } from '../../../src/domain/records/record-digest';
import { Database } from '../../../src/storage/database/database';
import { storeOf } from '../../../src/storage/database/database-structure';
import { addParts } from '../../../src/storage/rack/add-records';
import { partsOfRack } from '../../../src/storage/rack/rack-parts';
import { anyAttachment, anyRecord } from '../../domain/records/record-arbitraries';
import * as fc from '../../properties';

/** Some thirty ids for up to ten parts: the same id often comes with other contents, with a digest or without. */
const somePart: fc.Arbitrary<BackupPart> = fc.oneof(
  anyRecord.map((record) => ({ kind: 'record' as const, record: sealed(record) })),
  anyRecord.map((record) => ({ kind: 'record' as const, record })),
  anyAttachment.map((attachment) => ({ kind: 'attachment' as const, attachment })),
);
const some = fc.array(somePart, { maxLength: 10 });

/** Everything that a phone holds which took these files in, in place or beside it, and what is in place. */
async function after(...files: readonly (readonly BackupPart[])[]) {
  globalThis.indexedDB = new IDBFactory();
  const database = new Database();
  for (const file of files) {
    await database.use((connection) => addParts(connection, file, 'compare'));
  }
  const all: string[] = [];
  for await (const { parts } of partsOfRack(database)) all.push(...parts.map(besideKey));
  const inPlace = await database.use((connection) =>
    Promise.all(Object.values(storeOf).map((store) => connection.getAll(store))),
  );
  return { all: [...new Set(all)].sort(), count: all.length, inPlace };
}

it('of two files nothing is lost and nothing doubled, whichever comes first', () =>
  fc.assert(
    fc.asyncProperty(some, some, async (one, other) => {
      const both = await after(one, other);
      expect((await after(other, one)).all).toEqual(both.all);
      expect(both.count).toBe(both.all.length);
      expect(both.all).toEqual([...new Set([...one, ...other].map(besideKey))].sort());
    }),
    { numRuns: 60 },
  ));

it('of three files the same is held in whatever order they are joined', () =>
  fc.assert(
    fc.asyncProperty(some, some, some, async (one, two, three) => {
      const { all } = await after(one, two, three);
      expect((await after([...two, ...three], one)).all).toEqual(all);
      expect((await after(three, one, two)).all).toEqual(all);
    }),
    { numRuns: 40 },
  ));

it('a file that is taken in again changes nothing, and what is in place stays', () =>
  fc.assert(
    fc.asyncProperty(some, some, async (ours, theirs) => {
      const before = await after(ours);
      const once = await after(ours, theirs);
      expect(await after(ours, theirs, theirs, ours)).toEqual(once);
      for (const [k, store] of before.inPlace.entries()) {
        for (const record of store) expect(once.inPlace[k]).toContainEqual(record);
      }
    }),
    { numRuns: 40 },
  ));
