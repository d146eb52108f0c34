// Settings in IndexedDB.
import type { SettingsLoad, SettingsStore } from '../domain/ports/settings-store';
import { restoreSettings, type Settings } from '../domain/records/settings';
import type { Database } from './database';

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

  async save(settings: Settings): Promise<boolean> {
    try {
      await this.#database.write(async (connection) => {
        const transaction = connection.transaction('settings', 'readwrite', {
          durability: 'strict',
        });
        await Promise.all([transaction.store.put(settings, key), transaction.done]);
      });
      return true;
    } catch {
      return false;
    }
  }
}
