// The database itself is the browser's (tests/browser); here only what is done about a connection that dies.
import type { OpenDBCallbacks } from 'idb';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { defaultSettings } from '../../../src/domain/settings/settings';
import { Database } from '../../../src/storage/database/database';
import type { RingwrightSchema } from '../../../src/storage/database/database-structure';
import { IndexedDbSettings } from '../../../src/storage/settings/indexed-db-settings';

const openDB = vi.hoisted(() => vi.fn());
vi.mock('idb', () => ({ openDB }));
const renewLog = vi.hoisted(() => vi.fn());
vi.mock('../../../src/storage/database/renew-log', () => ({ renewLog }));

/** A connection that answers, or fails as a dead one does. */
const connection = (get: () => Promise<unknown> = async () => undefined) => ({
  get,
  close: vi.fn(),
  transaction: () => ({ store: { get, put: get }, done: get() }),
});
const dead = () =>
  connection(() => Promise.reject(new DOMException('Connection lost', 'UnknownError')));
const callbacks = (): OpenDBCallbacks<RingwrightSchema> => openDB.mock.lastCall?.[2];

beforeEach(() => {
  openDB.mockReset();
  renewLog.mockReset().mockResolvedValue(undefined);
});

describe('the database', () => {
  it('is opened once, when it is first needed', async () => {
    openDB.mockResolvedValue(connection());
    const database = new Database();
    expect(openDB).not.toHaveBeenCalled();
    await Promise.all([database.use(async () => 1), database.use(async () => 2)]);
    expect(openDB).toHaveBeenCalledTimes(1);
  });

  it('is opened again when its connection turns out dead, and the work is done on the new one', async () => {
    const first = dead();
    openDB.mockResolvedValueOnce(first).mockResolvedValueOnce(connection(async () => 'kept'));
    const found = await new Database().use((live) => live.get('settings', 'settings'));
    expect(found).toBe('kept');
    expect(first.close).toHaveBeenCalled();
  });

  it('renews the log once, before the first writing, and again where that could not be done', async () => {
    openDB.mockResolvedValue(connection());
    renewLog.mockRejectedValueOnce(new DOMException('No room', 'QuotaExceededError'));
    const database = new Database();
    await database.use(async () => undefined);
    expect(renewLog).not.toHaveBeenCalled();
    for (const each of [1, 2, 3]) expect(await database.write(async () => each)).toBe(each);
    expect(renewLog).toHaveBeenCalledTimes(2);
  });

  it('tries only twice', async () => {
    openDB.mockImplementation(async () => dead());
    const work = new Database().use((live) => live.get('settings', 'settings'));
    await expect(work).rejects.toThrow('Connection lost');
    expect(openDB).toHaveBeenCalledTimes(2);
  });

  it('does not keep an opening that failed', async () => {
    openDB.mockRejectedValueOnce(new DOMException('newer', 'VersionError'));
    openDB.mockResolvedValueOnce(connection());
    const database = new Database();
    await expect(database.use(async () => 1)).rejects.toThrow('newer');
    expect(await database.use(async () => 2)).toBe(2);
  });

  it('lets go when the browser ends the connection', async () => {
    openDB.mockResolvedValue(connection());
    const database = new Database();
    await database.use(async () => 1);
    callbacks().terminated?.();
    await database.use(async () => 2);
    expect(openDB).toHaveBeenCalledTimes(2);
  });

  it('lets go when a newer app in another tab waits for it', async () => {
    openDB.mockResolvedValue(connection());
    const database = new Database();
    await database.use(async () => 1);
    const close = vi.fn();
    const event = { target: { close } } as unknown as IDBVersionChangeEvent;
    callbacks().blocking?.(1, 2, event);
    expect(close).toHaveBeenCalled();
    await database.use(async () => 2);
    expect(openDB).toHaveBeenCalledTimes(2);
  });
});

describe('the settings', () => {
  it('are the defaults when nothing is stored', async () => {
    openDB.mockResolvedValue(connection());
    const load = await new IndexedDbSettings(new Database()).load();
    expect(load).toEqual({ kind: 'loaded', settings: defaultSettings, repairs: [] });
  });

  it('are unavailable, not the defaults, when storage cannot be read', async () => {
    openDB.mockRejectedValue(new DOMException('newer', 'VersionError'));
    expect(await new IndexedDbSettings(new Database()).load()).toEqual({ kind: 'unavailable' });
  });

  it('say whether they were saved', async () => {
    openDB.mockResolvedValue(connection());
    expect(await new IndexedDbSettings(new Database()).save(defaultSettings)).toBe(true);
    openDB.mockImplementation(async () => dead());
    expect(await new IndexedDbSettings(new Database()).save(defaultSettings)).toBe(false);
  });
});
