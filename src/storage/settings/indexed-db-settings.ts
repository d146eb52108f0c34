// Settings in IndexedDB.
import type { SettingsLoad, SettingsStore } from '../../domain/ports/settings-store';
import type { Settings } from '../../domain/settings/settings';
import type { Database } from '../database/database';

const key = 'settings';

/** Comes after the first paint: only what was stored before needs it. */
const loadRestoring = () => import('../../domain/settings/restore-settings');

export class IndexedDbSettings implements SettingsStore {
  readonly #database: Database;

  constructor(database: Database) {
    this.#database = database;
  }

  async load(): Promise<SettingsLoad> {
    try {
      const [{ restoreSettings }, stored] = await Promise.all([
        loadRestoring(),
        this.#database.use((connection) => connection.get('settings', key)),
      ]);
      const { value, repairs } = restoreSettings(stored);
      return { kind: 'loaded', settings: value, repairs };
    } catch {
      // Private window, storage refused, a database of a newer version, or no network at the very first visit: the
      // user is told.
      return { kind: 'unavailable' };
    }
  }

  async save(changes: Partial<Settings>): Promise<boolean> {
    try {
      // Before the transaction, which would end while it waits.
      const { restoreSettings } = await loadRestoring();
      await this.#database.write(async (connection) => {
        const transaction = connection.transaction('settings', 'readwrite', {
          durability: 'strict',
        });
        // Another window may have changed other settings since this one read them.
        const write = async () => {
          const { value } = restoreSettings(await transaction.store.get(key));
          await transaction.store.put({ ...value, ...changes }, key);
        };
        await Promise.all([write(), transaction.done]);
      });
      return true;
    } catch {
      return false;
    }
  }
}
