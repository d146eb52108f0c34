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

  /** Runs `work` on a live connection; a connection that turns out dead is opened again once. Rejects if that fails too. */
  async use<T>(work: (connection: Connection) => Promise<T>): Promise<T> {
    const opening = this.#open();
    // What cannot be opened (newer version, storage refused) would not open a second time either.
    const connection = await opening;
    try {
      return await work(connection);
    } catch {
      // WebKit loses connections in the background; every retry on the same handle would lose the write.
      this.#forget(opening);
      connection.close();
      return work(await this.#open());
    }
  }

  #open(): Promise<Connection> {
    if (this.#opening) return this.#opening;
    const opening: Promise<Connection> = openDB<RingwrightSchema>(databaseName, version, {
      // Structure only, and synchronous: an awaited migration that fails would leave half of it behind.
      upgrade(database) {
        if (!database.objectStoreNames.contains('settings')) database.createObjectStore('settings');
      },
      // A newer app in another tab waits for this connection; writes under way are still finished.
      blocking: (_current, _blocked, event) => {
        this.#forget(opening);
        (event.target as IDBDatabase).close();
      },
      terminated: () => this.#forget(opening),
    });
    this.#opening = opening;
    opening.catch(() => this.#forget(opening));
    return opening;
  }

  /** A newer connection than `opening` stays. */
  #forget(opening: Promise<Connection>): void {
    if (this.#opening === opening) this.#opening = null;
  }
}
