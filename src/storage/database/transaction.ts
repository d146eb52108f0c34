// One transaction of the database: all of it or nothing, and the error that says most.
import type { IDBPTransaction, StoreNames } from 'idb';
import type { Connection, RingwrightSchema } from './database-structure';
import { isFull } from './store-trouble';

export type StoreName = StoreNames<RingwrightSchema>;
export type Transaction<Mode extends IDBTransactionMode> = IDBPTransaction<
  RingwrightSchema,
  StoreName[],
  Mode
>;

/**
 * Runs `work` in one transaction over `stores` and resolves to its result once all that it wrote is on disk (strict
 * durability). `work` may wait for nothing but this transaction. Rejects, with nothing written, if any part failed.
 */
export async function inTransaction<T, Mode extends 'readonly' | 'readwrite'>(
  connection: Connection,
  stores: readonly StoreName[],
  mode: Mode,
  work: (transaction: Transaction<Mode>) => Promise<T>,
): Promise<T> {
  const transaction = connection.transaction([...stores], mode, { durability: 'strict' });
  const working = work(transaction).catch((error: unknown) => {
    abort(transaction);
    throw error;
  });
  if (mode === 'readonly') {
    // What was read is true however the transaction ends, so there is no waiting for the browser to close it.
    transaction.done.catch(() => undefined);
    return working;
  }
  const [worked, done] = await Promise.allSettled([working, transaction.done]);
  if (worked.status === 'fulfilled' && done.status === 'fulfilled') return worked.value;
  const reasons = [worked, done].flatMap((part) =>
    part.status === 'rejected' ? [part.reason as unknown] : [],
  );
  // A full phone shows in the request or in the transaction; the other then only says that it was aborted.
  throw reasons.find(isFull) ?? reasons[0];
}

function abort(transaction: Transaction<'readonly' | 'readwrite'>): void {
  try {
    transaction.abort();
  } catch {
    // It had already been aborted by the error itself.
  }
}
