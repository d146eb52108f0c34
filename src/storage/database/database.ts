// The one place that opens the database: when it is first needed, and again when its connection has died.
import { type OpenDBCallbacks, openDB } from 'idb';
import {
  type Connection,
  databaseName,
  databaseVersion,
  type RingwrightSchema,
  raiseStructure,
} from './database-structure';
import { renewLog } from './renew-log';
import { isFull, OpeningFailed } from './store-trouble';

/** Milliseconds that an older window has to finish writing and let go before the user is asked to close it (chosen). */
const patience = 1000;
/** Milliseconds after which another window is blamed without a word from the browser: it tells the first in the queue only. */
const longPatience = 10_000;

interface Opening {
  readonly connection: Promise<Connection>;
  /** Rejects when another window has held up the opening for too long; the opening itself goes on. */
  readonly heldUp: Promise<never>;
}

export class Database {
  #opening: Opening | null = null;
  #renewed: Promise<void> | null = null;
  #hasOpened = false;
  #isDeleted = false;

  /**
   * Runs `work` on a live connection; a connection that turns out dead is opened again once, so `work` must bear
   * being done twice. Rejects with `OpeningFailed`, or with what `work` rejected with.
   */
  async use<T>(work: (connection: Connection) => Promise<T>): Promise<T> {
    const opening = this.#open();
    // What cannot be opened (newer version, storage refused) would not open a second time either.
    const connection = await ready(opening);
    try {
      return await work(connection);
    } catch (error) {
      if (isFull(error) || error instanceof OpeningFailed) throw error;
      // WebKit loses connections in the background; every retry on the same handle would lose the write.
      this.#forget(opening);
      connection.close();
      return work(await ready(this.#open()));
    }
  }

  /** As `use`, for work that writes. */
  write<T>(work: (connection: Connection) => Promise<T>): Promise<T> {
    return this.use(async (connection) => {
      // Once for as long as the app is open. Where it fails (a full phone), the next writing tries again; what is
      // told is whether the work itself was done.
      this.#renewed ??= renewLog(connection).catch(() => {
        this.#renewed = null;
      });
      await this.#renewed;
      return work(connection);
    });
  }

  /**
   * Whether the database was found empty after it had been open: the browser, or the user in its settings, has deleted
   * it meanwhile. True once each time.
   */
  takeDeleted(): boolean {
    const isDeleted = this.#isDeleted;
    this.#isDeleted = false;
    return isDeleted;
  }

  #open(): Opening {
    if (this.#opening) return this.#opening;
    const opening = startOpening(
      (gone) => this.#forget(gone),
      () => {
        this.#isDeleted = this.#hasOpened;
      },
    );
    opening.connection.then(
      () => {
        this.#hasOpened = true;
      },
      () => undefined,
    );
    this.#opening = opening;
    return opening;
  }

  /** A connection newer than `opening` stays. */
  #forget(opening: Opening): void {
    if (this.#opening === opening) this.#opening = null;
  }
}

/** The connection as soon as it is there, also if it came late. */
const ready = ({ connection, heldUp }: Opening): Promise<Connection> =>
  Promise.race([connection, heldUp]);

/**
 * Begins to open; `forget` is called with the opening when it failed or its connection is gone, `onNew` when there
 * was no database.
 */
function startOpening(forget: (opening: Opening) => void, onNew: () => void): Opening {
  let giveUp: (error: OpeningFailed) => void = () => undefined;
  const heldUp = new Promise<never>((_, fail) => {
    giveUp = fail;
  });
  heldUp.catch(() => undefined);
  let timer = setTimeout(() => giveUp(new OpeningFailed('other-window')), longPatience);
  const isOver = () => clearTimeout(timer);

  const connection = connect({
    upgrade: (database, oldVersion) => {
      if (oldVersion === 0) onNew();
      raiseStructure(database, oldVersion);
    },
    blocked: () => {
      isOver();
      timer = setTimeout(() => giveUp(new OpeningFailed('other-window')), patience);
    },
    // A newer app in another tab waits for this connection; writes under way are still finished.
    blocking: (_current, _blocked, event) => {
      forget(opening);
      (event.target as IDBDatabase).close();
    },
    terminated: () => forget(opening),
  });
  const opening: Opening = { connection, heldUp };
  connection.then(isOver, () => {
    isOver();
    forget(opening);
  });
  return opening;
}

/** Also where there is no IndexedDB at all, it rejects and does not throw. */
async function connect(callbacks: OpenDBCallbacks<RingwrightSchema>): Promise<Connection> {
  try {
    return await openDB<RingwrightSchema>(databaseName, databaseVersion, callbacks);
  } catch (error) {
    throw OpeningFailed.because(error);
  }
}
