// Keeps Chromium from losing everything some time after it was killed in the middle of a write.
//
// Its database (LevelDB) writes to a log first. A kill or a flat battery can leave half a record at the end of the
// log. That is harmless, until Chromium goes on writing right behind it, as it does: at the start after the next it
// finds the half record in the middle of the log, calls the database corrupt and deletes all of it. (Found by
// killing Chromium 156 again and again; tests/browser/torn-log.test.ts does it on purpose.) A log that has grown
// beyond Chromium's write buffer of 4 MB is replaced by a new one, and the old one deleted once its records are in
// a table. So before the first record of a session is written, more than that is written and removed again.
//
// A window stays open: until that has been done, what is written to push the half record out stands right behind
// it. Who kills Chromium in the middle of a write, and again in the moments of the renewal after the next start,
// loses all. No order of operations closes it from within a page: every request that writes goes through the same
// log, all databases of an origin share it, and none makes Chromium begin a new log or table without writing first.
// What is done instead: no record is acknowledged before the renewal is through, so nothing new is at stake in the
// window; nothing is written at all by a session that only reads; and a rack that is gone is missed, with the way
// back from the last backup (`rack-trace.ts`).
import type { Connection } from './database-structure';

/** Longer values are kept as files, which do not go through the log. */
const bytesOfOne = 60_000;
/**
 * 4.5 MB in all. Chromium 156 sends them through its log twice, so that it begins a new log twice; and it does so
 * the second time only once all records of the old one are in a table and the old one is gone.
 */
const count = 75;

/**
 * Resolves once Chromium has a new log and the old one is gone; does nothing in other browsers, which have no such
 * log. Rejects when it cannot be written, which loses nothing.
 */
export async function renewLog(connection: Connection): Promise<void> {
  if (typeof navigator === 'undefined' || !('userAgentData' in navigator)) return;
  const transaction = connection.transaction('scratch', 'readwrite', { durability: 'relaxed' });
  const bytes = new Uint8Array(bytesOfOne);
  const puts = Array.from({ length: count }, (_, key) => transaction.store.put(bytes, key));
  await Promise.all([...puts, transaction.done]);
  await connection.clear('scratch');
}
