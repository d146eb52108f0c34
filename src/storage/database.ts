// The one place that knows the database: opened when first needed, forgotten when it dies, opened again.
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

export const databaseName = 'ringwright';
const version = 1;

export interface RingwrightSchema extends DBSchema {
  settings: { key: 'settings'; value: unknown };
}

export type Connection = IDBPDatabase<RingwrightSchema>;

export class Database {
  #opening: Promise<Connection> | null = null;

  /** Runs `work` on a live connection; a connection that turns out dead is opened again once. */
  async use<T>(work: (connection: Connection) => Promise<T>): Promise<T> {
    try {
      return await work(await this.#open());
    } catch {
      // WebKit loses connections in the background; every retry on the same handle would lose the write.
      this.#forget();
      return work(await this.#open());
    }
  }

  #open(): Promise<Connection> {
    this.#opening ??= openDB<RingwrightSchema>(databaseName, version, {
      // Structure only, and synchronous: an awaited migration that fails would leave half of it behind.
      upgrade(database) {
        if (!database.objectStoreNames.contains('settings')) database.createObjectStore('settings');
      },
      blocking: (_current, _blocked, event) => {
        this.#forget();
        (event.target as IDBDatabase).close();
      },
      terminated: () => this.#forget(),
    }).catch((error: unknown) => {
      this.#forget();
      throw error;
    });
    return this.#opening;
  }

  #forget(): void {
    this.#opening = null;
  }
}
