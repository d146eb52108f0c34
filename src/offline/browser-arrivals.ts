// Files that were shared with the app wait in a cache; files that were opened with it come by the browser's launch queue.
import type { Arrivals, ShareRefusal } from '../domain/ports/arrivals';
import type { FileOnHand } from '../domain/ports/file-handout';
import type { Unsubscribe } from '../domain/ports/unsubscribe';
import {
  nameHeader,
  reasonHeader,
  refusedPlace,
  shareRefusals,
  waitingCache,
} from './waiting-place';

/** What Chromium on a computer tells an installed app about its start (WICG web-app-launch). */
interface LaunchQueue {
  setConsumer(
    consumer: (launch: { readonly files?: readonly FileSystemFileHandle[] }) => void,
  ): void;
}

export class BrowserArrivals implements Arrivals {
  readonly #listeners = new Set<() => void>();
  /** Opened with the app. They wait for as long as it is open: they are still where they came from. */
  readonly #opened: File[] = [];
  /** Addresses in the cache of the shared files that were given out. */
  readonly #places = new Map<FileOnHand, Request>();

  constructor(launchQueue: LaunchQueue | undefined = queueOf(window)) {
    launchQueue?.setConsumer(({ files = [] }) => void this.#take(files));
  }

  onArrival(listener: () => void): Unsubscribe {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  async waiting(): Promise<FileOnHand | null> {
    return this.#opened[0] ?? (await this.#shared());
  }

  async letGo(file: FileOnHand): Promise<void> {
    const k = this.#opened.indexOf(file as File);
    if (k >= 0) this.#opened.splice(k, 1);
    const place = this.#places.get(file);
    if (!place) return;
    this.#places.delete(file);
    try {
      await (await caches.open(waitingCache)).delete(place);
    } catch {
      // Storage cannot be reached: the file will be asked about again.
    }
  }

  async refused(): Promise<ShareRefusal | null> {
    try {
      if (!('caches' in window) || !(await caches.has(waitingCache))) return null;
      const cache = await caches.open(waitingCache);
      const place = new URL(refusedPlace, document.baseURI).href;
      const reason = (await cache.match(place))?.headers.get(reasonHeader);
      if (reason !== undefined) await cache.delete(place);
      return shareRefusals.find((each) => each === reason) ?? null;
    } catch {
      // Storage may not be looked at: then nothing was shared either.
      return null;
    }
  }

  async #take(handles: readonly FileSystemFileHandle[]): Promise<void> {
    const before = this.#opened.length;
    for (const handle of handles) {
      try {
        this.#opened.push(await handle.getFile());
      } catch {
        // Gone since, or unreadable: nothing arrived.
      }
    }
    if (this.#opened.length === before) return;
    for (const listener of this.#listeners) listener();
  }

  async #shared(): Promise<File | null> {
    try {
      // Opening a cache would make it, so one that is not there is left alone.
      if (!('caches' in window) || !(await caches.has(waitingCache))) return null;
      const cache = await caches.open(waitingCache);
      const refused = new URL(refusedPlace, document.baseURI).href;
      const place = (await cache.keys()).find(({ url }) => url !== refused);
      const kept = place && (await cache.match(place));
      if (!kept) return null;
      const file = new File([await kept.blob()], nameOf(kept), { type: '' });
      this.#places.set(file, place);
      return file;
    } catch {
      // Storage may not be looked at: then nothing can wait there.
      return null;
    }
  }
}

const queueOf = (page: Window): LaunchQueue | undefined =>
  'launchQueue' in page ? (page.launchQueue as LaunchQueue) : undefined;

function nameOf(kept: Response): string {
  try {
    return decodeURIComponent(kept.headers.get(nameHeader) ?? '');
  } catch {
    // Not written by this app.
    return '';
  }
}
