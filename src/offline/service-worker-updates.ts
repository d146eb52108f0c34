// The offline copy: registered once, "ready" only when it is true, updated only when the app says so.
import { Workbox } from 'workbox-window';
import type { AppUpdates, OfflineState, Unsubscribe } from '../domain/ports';

/** Some browsers never report the new worker's takeover; then the reload happens after this, ms. */
const reloadAnyway = 3000;

export class ServiceWorkerUpdates implements AppUpdates {
  readonly #listeners = new Set<(state: OfflineState) => void>();
  #state: OfflineState = { kind: 'not-ready' };
  #workbox: Workbox | null = null;

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
    } catch {
      // No network on the very first visit, or storage refused: the app still runs, but not offline.
      return this.#tell({ kind: 'not-ready' });
    }
    await this.#check();
  }

  apply(): void {
    const workbox = this.#workbox;
    if (!workbox) return;
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

  /**
   * An activated worker has stored every file of its list (its installation fails otherwise), but this
   * page is served from there only when that worker controls it; and storage may have been cleared since.
   */
  async #check(): Promise<void> {
    if (this.#state.kind === 'update-waiting') return;
    if (!navigator.serviceWorker.controller) return;
    const names = await caches.keys();
    const kept = await Promise.all(
      names.map(async (name) => (await (await caches.open(name)).keys()).map(({ url }) => url)),
    );
    const urls = kept.flat();
    const hasPage = urls.some((url) => new URL(url).pathname.endsWith('/index.html'));
    const hasScript = urls.some((url) => new URL(url).pathname.endsWith('.js'));
    if (hasPage && hasScript) this.#tell({ kind: 'ready' });
  }

  #tell(state: OfflineState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener(state);
  }
}
