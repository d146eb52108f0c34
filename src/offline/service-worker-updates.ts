// The offline copy: "ready" only when every file of it was checked, updated only when the app says so.
import { Workbox } from 'workbox-window';
import type { AppUpdates, OfflineState } from '../domain/ports/phone-ports';
import type { Unsubscribe } from '../domain/ports/unsubscribe';
import { findRefusal } from './find-refusal';
import { partsInUse } from './parts-in-use';
import { ask, type Looked, type ToPage, type ToWorker, type Whole } from './worker-messages';

/**
 * Some browsers never report the new worker's takeover; the reload then happens after this time, ms (times: own
 * choice).
 */
const reloadAnyway = 3000;
/** A worker that does not answer for this long (ms) is not this app's: to look at all files takes a phone a second. */
const patience = 15_000;
/** How long it may take to fetch what is wrong in the copy, ms. */
const longestMend = 60_000;
/** An app that stays open for days asks for a new version when it is looked at, at most this often, ms. */
const askEvery = 60 * 60 * 1000;
/** As long as there is no copy, or the network gave something wrong, it asks more often, ms. */
const askEveryUnready = 30_000;

export class ServiceWorkerUpdates implements AppUpdates {
  readonly #listeners = new Set<(state: OfflineState) => void>();
  #state: OfflineState = { kind: 'not-ready', wrongAnswer: false };
  #wrongAnswer = false;
  /**
   * Registers the worker and asks for updates. The states are followed here: its events come only once it has
   * registered, and end with the first version that it takes to be another window's.
   */
  #workbox: Workbox | null = null;
  #registration: ServiceWorkerRegistration | null = null;
  #askedAt = Number.NEGATIVE_INFINITY;
  #applying = false;

  /** `isMeasuring`: whether any window of the app is. */
  constructor(readonly isMeasuring: () => Promise<boolean>) {}

  onState(listener: (state: OfflineState) => void): Unsubscribe {
    this.#listeners.add(listener);
    listener(this.#state);
    return () => this.#listeners.delete(listener);
  }

  /** Registers the service worker; never rejects. Call it once the first screen is there. */
  async begin(): Promise<void> {
    if (import.meta.env.DEV) return;
    if (!('serviceWorker' in navigator)) return this.#tell({ kind: 'unsupported' });
    const workers = navigator.serviceWorker;
    workers.addEventListener('message', ({ data, ports }) => this.#obey(data as ToPage, ports[0]));
    workers.addEventListener('controllerchange', () => void this.#takenOver());
    workers.startMessages();
    document.addEventListener('visibilitychange', () => void this.#askNowAndThen());
    window.addEventListener('online', () => void this.#askNowAndThen());
    send(workers.controller, { kind: 'shown' });
    await this.#check();
    await this.#register();
    await this.#mend();
  }

  apply(): void {
    if (!this.#applying) void this.#apply();
  }

  async #apply(): Promise<void> {
    this.#applying = true;
    if (await this.isMeasuring()) {
      this.#applying = false;
      return this.#tell({ kind: 'update-waiting', isMeasured: true });
    }
    const waiting = this.#registration?.waiting;
    // Without one, another window has put the new version in place already.
    if (!waiting) return window.location.reload();
    let reloaded = false;
    const reload = (): void => {
      if (reloaded) return;
      reloaded = true;
      window.location.reload();
    };
    navigator.serviceWorker.addEventListener('controllerchange', reload);
    setTimeout(reload, reloadAnyway);
    send(waiting, { kind: 'take-over' });
  }

  async #register(): Promise<void> {
    this.#askedAt = performance.now();
    // If what comes now is wrong as well, the worker says so.
    this.#wrongAnswer = false;
    const address = new URL('sw.js', document.baseURI).href;
    // Not before it is known that there are service workers: it listens to them at once.
    this.#workbox ??= new Workbox(address);
    try {
      const registration = await this.#workbox.register({ immediate: true });
      if (!registration) return;
      this.#watch(registration);
      // If there is a worker already, registering asks for nothing, and the browser does not report what it asks by
      // itself.
      if (registration.active) {
        // A page that was asked for while the worker was getting ready has none, and would have none until the next.
        if (!navigator.serviceWorker.controller) send(registration.active, { kind: 'claim' });
        await this.#workbox.update();
      }
      await this.#check();
    } catch (error) {
      // An older copy may still be there, and stays as it is.
      const refusal = await findRefusal(address, error);
      if (refusal === 'wrong-answer') this.#obey({ kind: 'wrong-answer' });
      if (refusal === 'unsupported' && this.#state.kind === 'not-ready') {
        this.#tell({ kind: 'unsupported' });
      }
    }
  }

  #watch(registration: ServiceWorkerRegistration): void {
    if (registration === this.#registration) return;
    this.#registration = registration;
    const follow = (worker: ServiceWorker | null): void => {
      worker?.addEventListener('statechange', () => void this.#offer());
    };
    registration.addEventListener('updatefound', () => follow(registration.installing));
    follow(registration.installing);
    void this.#offer();
  }

  /** Offers a version that waits, if it is one of this app and whole. */
  async #offer(): Promise<void> {
    const waiting = this.#registration?.waiting;
    if (!waiting || !navigator.serviceWorker.controller) return;
    if (await isWhole(waiting, [])) this.#tell({ kind: 'update-waiting', isMeasured: false });
    else this.#obey({ kind: 'wrong-answer' });
  }

  #obey(message: ToPage, answers?: MessagePort): void {
    switch (message.kind) {
      case 'wrong-answer':
        this.#wrongAnswer = true;
        void this.#check();
        return;
      case 'which-parts':
        answers?.postMessage(partsInUse());
    }
  }

  async #takenOver(): Promise<void> {
    if (this.#applying) return;
    const { controller } = navigator.serviceWorker;
    // Another window has put a new version in place: this one keeps its own files until it is opened anew.
    if (
      controller &&
      !(await isWhole(controller, partsInUse())) &&
      (await isWhole(controller, []))
    ) {
      return this.#tell({ kind: 'update-waiting', isMeasured: false });
    }
    await this.#check();
  }

  async #askNowAndThen(): Promise<void> {
    const isDone = this.#state.kind !== 'not-ready' && !this.#wrongAnswer;
    const since = performance.now() - this.#askedAt;
    if (document.hidden || since < (isDone ? askEvery : askEveryUnready)) return;
    await this.#register();
    await this.#mend();
  }

  async #check(): Promise<void> {
    const { controller } = navigator.serviceWorker;
    const isReady = controller !== null && (await isWhole(controller, partsInUse()));
    // An update may have arrived while the copy was looked at; its notice must stay.
    if (this.#state.kind === 'update-waiting') return;
    this.#tell({ kind: isReady ? 'ready' : 'not-ready', wrongAnswer: this.#wrongAnswer });
  }

  /** What the browser has lost of the copy, or what was wrong in it, is fetched before it is missed. */
  async #mend(): Promise<void> {
    const { controller } = navigator.serviceWorker;
    if (!controller || this.#state.kind !== 'not-ready') return;
    await ask<Looked>(controller, { kind: 'mend' }, longestMend);
    await this.#check();
  }

  #tell(state: OfflineState): void {
    this.#state = state;
    for (const listener of this.#listeners) listener(state);
  }
}

const send = (worker: ServiceWorker | null, message: ToWorker): void =>
  worker?.postMessage(message);

async function isWhole(worker: ServiceWorker, parts: readonly string[]): Promise<boolean> {
  const answer = await ask<Whole>(worker, { kind: 'is-whole', parts }, patience);
  return answer?.whole ?? false;
}
