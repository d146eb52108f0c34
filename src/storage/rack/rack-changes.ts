// Tells this window and the others which pans were written to.
import type { Unsubscribe } from '../../domain/ports/unsubscribe';
import { type PanId, panId } from '../../domain/records/rack-records';

const channelName = 'ringwright-rack';

export class RackChanges {
  readonly #listeners = new Set<(pans: readonly PanId[]) => void>();
  #channel: BroadcastChannel | null = null;

  onChange(listener: (pans: readonly PanId[]) => void): Unsubscribe {
    this.#listeners.add(listener);
    this.#open();
    return () => this.#listeners.delete(listener);
  }

  announce(pans: readonly PanId[]): void {
    this.#tell(pans);
    this.#open()?.postMessage(pans);
  }

  #tell(pans: readonly PanId[]): void {
    for (const listener of this.#listeners) listener(pans);
  }

  /** An old browser has no channel: its other windows then see what is new when they are opened again. */
  #open(): BroadcastChannel | null {
    if (this.#channel || typeof BroadcastChannel === 'undefined') return this.#channel;
    this.#channel = new BroadcastChannel(channelName);
    this.#channel.onmessage = ({ data }: MessageEvent<unknown>) => {
      // Another version of the app may be the one that speaks.
      if (Array.isArray(data)) this.#tell(data.filter((id) => typeof id === 'string').map(panId));
    };
    return this.#channel;
  }
}
