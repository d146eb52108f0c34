// Settings in IndexedDB.
import type { SettingsLoad, SettingsStore } from '../../domain/ports/settings-store';
import { restoreSettings, type Settings } from '../../domain/settings/settings';
import type { Database } from '../database/database';

const key = 'settings';

export class IndexedDbSettings implements SettingsStore {
  readonly #database: Database;

  constructor(database: Database) {
    this.#database = database;
  }

  async load(): Promise<SettingsLoad> {
    try {
      const stored = await this.#database.use((connection) => connection.get('settings', key));
      const { value, repairs } = restoreSettings(stored);
      return { kind: 'loaded', settings: value, repairs };
    } catch {
      // Private window, storage refused, or a database of a newer version: the user is told.
      return { kind: 'unavailable' };
    }
  }

  async save(changes: Partial<Settings>): Promise<boolean> {
    try {
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
