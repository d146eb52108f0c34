// The database is deleted while a round goes on: it is said at once, and nothing that was measured is lost.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { deleteDB } from 'idb';
import { beforeEach, expect, it } from 'vitest';
import { createRecordKeeper } from '../../../src/state/keeping/record-keeper';
import { Database } from '../../../src/storage/database/database';
import { IndexedDbPanStore } from '../../../src/storage/rack/indexed-db-pan-store';
import { sampleMark, samplePan } from '../rack/rack-sample';

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

const settle = () => new Promise((done) => setTimeout(done, 50));
const marksIn = async (store: IndexedDbPanStore) => {
  const loaded = await store.pan(samplePan);
  return loaded.kind === 'loaded' ? loaded.value.marks.map(({ id }) => id).sort() : loaded.trouble;
};

it('the next saving says so, and trying again saves all that this window has made', async () => {
  const store = new IndexedDbPanStore(new Database());
  const keeper = createRecordKeeper(store);
  await keeper.keep([sampleMark('mark-1')]);
  await keeper.keep([sampleMark('mark-2')]);
  await deleteDB('ringwright');
  void keeper.keep([sampleMark('mark-3')]);
  await settle();
  expect(keeper.saving.value).toEqual({ kind: 'not-kept', trouble: 'deleted' });
  await keeper.retry();
  expect(keeper.saving.value).toEqual({ kind: 'kept' });
  expect(await marksIn(store)).toEqual(['mark-1', 'mark-2', 'mark-3']);
});

it('a first start and a connection that died are no deletion', async () => {
  const store = new IndexedDbPanStore(new Database());
  expect(await store.keep([sampleMark('mark-1')])).toEqual({ kind: 'kept' });
  const again = new IndexedDbPanStore(new Database());
  expect(await again.keep([sampleMark('mark-2')])).toEqual({ kind: 'kept' });
  expect(await marksIn(again)).toEqual(['mark-1', 'mark-2']);
});
