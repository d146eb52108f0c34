// The offline copy: registered once, "ready" only when it is true, updated only when the app says so.
import { Workbox } from 'workbox-window';
import type { AppUpdates, OfflineState } from '../domain/ports/phone-ports';
import type { Unsubscribe } from '../domain/ports/unsubscribe';
import { hasCompleteCopy } from './kept-files';

/** Some browsers never report the new worker's takeover; then the reload happens after this, ms. */
const reloadAnyway = 3000;
/** An app that stays open for days asks for a new version when it is looked at, at most this often, ms. */
const askEvery = 60 * 60 * 1000;

export class ServiceWorkerUpdates implements AppUpdates {
  readonly #listeners = new Set<(state: OfflineState) => void>();
  #state: OfflineState = { kind: 'not-ready' };
  #workbox: Workbox | null = null;
  #applying = false;

  onState(listener: (state: OfflineState) => void): Unsubscribe {
    this.#listeners.add(listener);
    listener(this.#state);
    return () => this.#listeners.delete(listener);
  }

  /** Registers the service worker; never rejects. */
  async begin(): Promise<void> {
    if (import.meta.env.DEV) return;
    if (!('serviceWorker' in navigator)) return this.#tell({ kind: 'unsupported' });
    const workbox = new Workbox(new URL('sw.js', document.baseURI).href);
    this.#workbox = workbox;
    workbox.addEventListener('waiting', () => this.#tell({ kind: 'update-waiting' }));
    workbox.addEventListener('controlling', () => void this.#check());
    workbox.addEventListener('activated', () => void this.#check());
    try {
      await workbox.register();
    } catch (error) {
      // No network on the very first visit, or storage refused. An older copy may still be there.
      await this.#check();
      // Refused for good, as with a certificate that the browser does not trust.
      const refused = error instanceof DOMException && error.name === 'SecurityError';
      if (refused && this.#state.kind === 'not-ready') this.#tell({ kind: 'unsupported' });
      return;
    }
    this.#askNowAndThen(workbox);
    await this.#check();
  }

  apply(): void {
    const workbox = this.#workbox;
    if (!workbox || this.#applying) return;
    this.#applying = true;
    let reloaded = false;
    const reload = (): void => {
      if (reloaded) return;
      reloaded = true;
      window.location.reload();
    };
    workbox.addEventListener('controlling', reload);
    setTimeout(reload, reloadAnyway);
    workbox.messageSkipWaiting();
  }

  #askNowAndThen(workbox: Workbox): void {
    let askedAt = performance.now();
    document.addEventListener('visibilitychange', () => {
      if (document.hidden || performance.now() - askedAt < askEvery) return;
      askedAt = performance.now();
      // Rejects without a network: then there is no new version to be had.
      workbox.update().catch(() => undefined);
    });
  }

  async #check(): Promise<void> {
    const kind = (await hasCompleteCopy()) ? 'ready' : 'not-ready';
    // An update may have arrived while the copy was looked at; its notice must stay.
    if (this.#state.kind !== 'update-waiting') this.#tell({ kind });
  }

  #tell(state: OfflineState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener(state);
  }
}
