// What the rack's memory says when it cannot read or write; each trouble has its own sentence on the screen.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { StoreTrouble } from '../../../src/domain/ports/pan-store';
import { Database } from '../../../src/storage/database/database';
import { IndexedDbPanStore } from '../../../src/storage/rack/indexed-db-pan-store';
import { IndexedDbSettings } from '../../../src/storage/settings/indexed-db-settings';
import { sampleEdit, sampleKnockCheck, samplePan, sampleStopgap } from '../rack/rack-sample';
import { makeDatabaseOfVersion1 } from './saved-database-1';
import { makeDatabaseOfVersion2 } from './saved-database-2';
import { makeDatabaseOfVersion3 } from './saved-database-3';

const trouble = (name: StoreTrouble) => ({ kind: 'trouble', trouble: name });
const edit = sampleEdit('edit-1', 'Lead 1');
const newStore = () => new IndexedDbPanStore(new Database());

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe('a database of version 1', () => {
  it('is raised with its settings, and takes a rack', async () => {
    await makeDatabaseOfVersion1(indexedDB);
    const database = new Database();
    expect(await new IndexedDbSettings(database).load()).toMatchObject({
      kind: 'loaded',
      settings: { shape: 1, a4: 442, theme: 'light' },
      repairs: [],
    });
    const store = new IndexedDbPanStore(database);
    expect(await store.keep([edit])).toEqual({ kind: 'kept' });
    expect(await store.pan(samplePan)).toMatchObject({ kind: 'loaded', value: { edits: [edit] } });
  });

  it.each([makeDatabaseOfVersion1, makeDatabaseOfVersion2, makeDatabaseOfVersion3])(
    'has the same structure afterwards as a new one: %o',
    async (make) => {
      const structure = async () => {
        await newStore().cards();
        const database = await openDB('ringwright');
        const names = [...database.objectStoreNames];
        const transaction = database.transaction(names);
        const stores = names.map((name) => {
          const { keyPath, indexNames } = transaction.objectStore(name);
          return { name, keyPath, indexes: [...indexNames] };
        });
        const { version } = database;
        database.close();
        return { version, stores };
      };
      const fresh = await structure();
      globalThis.indexedDB = new IDBFactory();
      await make(indexedDB);
      expect(await structure()).toEqual(fresh);
      expect(fresh.version).toBe(4);
    },
  );
});

describe('a database of version 2', () => {
  it('is raised with its records, and takes a knock check and a stopgap beside them', async () => {
    await makeDatabaseOfVersion2(indexedDB);
    const store = newStore();
    const [check, stopgap] = [sampleKnockCheck('check-1'), sampleStopgap('stopgap-1')];
    expect(await store.keep([check, stopgap])).toEqual({ kind: 'kept' });
    expect(await store.pan(samplePan)).toMatchObject({
      kind: 'loaded',
      value: {
        marks: [{ id: 'mark-1', mark: 'buzzing' }],
        knockChecks: [check],
        stopgaps: [stopgap],
      },
      repairs: [],
    });
  });
});

describe('a database of a newer version', () => {
  it('is left alone and said', async () => {
    const newer = await openDB('ringwright', 99, {
      upgrade: (database) => database.createObjectStore('rack').put('newer', 'key'),
    });
    newer.close();
    const store = newStore();
    expect(await store.cards()).toEqual(trouble('newer'));
    expect(await store.keep([edit])).toEqual(trouble('newer'));
    expect(await (await openDB('ringwright')).get('rack', 'key')).toBe('newer');
  });

  it('is said, too, when it comes while the rack is open', async () => {
    const store = newStore();
    await store.keep([edit]);
    (await openDB('ringwright', 99)).close();
    expect(await store.keep([edit])).toEqual(trouble('newer'));
  });
});

describe('an older window that does not let go', () => {
  it('is said after a while, also to those who ask later, and everything works once it is gone', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const older = await openDB('ringwright', 1);
    const store = newStore();
    const asked = store.cards();
    await vi.advanceTimersByTimeAsync(20_000);
    expect(await asked).toEqual(trouble('other-window'));
    expect(await store.keep([edit])).toEqual(trouble('other-window'));
    older.close();
    await vi.waitFor(async () => expect(await store.keep([edit])).toEqual({ kind: 'kept' }));
  });
});

describe('no storage', () => {
  it('is said when the browser has none', async () => {
    globalThis.indexedDB = undefined as never;
    expect(await newStore().cards()).toEqual(trouble('unavailable'));
    expect(await newStore().keep([edit])).toEqual(trouble('unavailable'));
  });

  it.each(['SecurityError', 'InvalidStateError'])(
    'is said when it is refused as %s',
    async (name) => {
      vi.spyOn(indexedDB, 'open').mockImplementation(() => {
        throw new DOMException('refused', name);
      });
      expect(await newStore().pan(samplePan)).toEqual(trouble('unavailable'));
    },
  );
});

describe('a full phone', () => {
  it('is said, and nothing of what did not fit is there', async () => {
    const store = newStore();
    await store.cards();
    const put = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    expect(await store.keep([edit])).toEqual(trouble('full'));
    put.mockRestore();
    expect(await store.pan(samplePan)).toMatchObject({ value: { edits: [] } });
    expect(await store.keep([edit])).toEqual({ kind: 'kept' });
  });
});

describe('a connection that died', () => {
  const lost = () => {
    throw new DOMException('Connection to Indexed Database server lost', 'UnknownError');
  };

  it('is opened anew without a word, and the record is kept', async () => {
    const store = newStore();
    await store.cards();
    const find = vi.spyOn(IDBObjectStore.prototype, 'getKey').mockImplementationOnce(lost);
    expect(await store.keep([edit])).toEqual({ kind: 'kept' });
    expect(find).toHaveBeenCalledTimes(2);
    expect(await store.pan(samplePan)).toMatchObject({ value: { edits: [edit] } });
  });

  it('for good is said', async () => {
    const store = newStore();
    vi.spyOn(IDBObjectStore.prototype, 'getKey').mockImplementation(lost);
    expect(await store.keep([edit])).toEqual(trouble('failed'));
  });
});
