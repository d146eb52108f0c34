import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { expect, it } from 'vitest';
import { Database } from '../../../src/storage/database/database';
import { addRecords } from '../../../src/storage/rack/add-records';
import * as fc from '../../properties';
import { sampleMark } from './rack-sample';

/** Names of any length, most of them close together, some twice. */
const names = (most: number) =>
  fc.array(fc.stringMatching(/^[a-z][a-z0-9]{0,3}$/), { maxLength: most });

it('many records at once are each added once, whichever of them are there already', async () => {
  await fc.assert(
    fc.asyncProperty(names(300), names(120), async (before, after) => {
      globalThis.indexedDB = new IDBFactory();
      const database = new Database();
      const add = (ids: readonly string[], note: string) =>
        database.use((connection) =>
          addRecords(connection, ids.map((id) => ({ ...sampleMark(id), note })) as never, []),
        );
      const first = await add(before, 'first');
      const second = await add(after, 'second');
      const [firstIds, allIds] = [new Set(before), new Set([...before, ...after])];
      expect(first.records).toBe(firstIds.size);
      expect(second.records).toBe(allIds.size - firstIds.size);
      const stored = await database.use((connection) => connection.getAll('marks'));
      expect(stored).toHaveLength(allIds.size);
      for (const mark of stored as { readonly id: string; readonly note: string }[]) {
        expect(mark.note).toBe(firstIds.has(mark.id) ? 'first' : 'second');
      }
    }),
    { numRuns: 40 },
  );
});
