// The windows of the app, as the service worker sees them.
import type { VerifiedCopy } from '../copy/verified-copy';
import { ask, type ToPage } from '../worker-messages';

declare const self: ServiceWorkerGlobalScope;

/**
 * A window that does not answer for this long (ms, own choice) may be asleep, and may wake up with an older version.
 */
const patience = 3000;

/** Also those that another version serves. */
const allWindows = (): Promise<readonly WindowClient[]> =>
  self.clients.matchAll({ type: 'window', includeUncontrolled: true });

export async function tellPages(message: ToPage): Promise<void> {
  for (const window of await allWindows()) window.postMessage(message);
}

/** Throws older copies away if every window says that it is made of this one. */
export async function dropOlder(copy: VerifiedCopy): Promise<void> {
  const windows = await allWindows();
  const answers = await Promise.all(
    windows.map((window) => ask<readonly string[]>(window, { kind: 'which-parts' }, patience)),
  );
  const areAllOurs = answers.every((parts) => parts?.every((part) => copy.has(part)));
  // A copy that is only just being filled belongs to a version to come.
  const { installing, waiting } = self.registration;
  if (areAllOurs && !installing && !waiting) await copy.older.deleteAll();
}
