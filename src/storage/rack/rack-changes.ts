// Tells this window and the others what was written to the rack.
import type { RackChange } from '../../domain/ports/pan-store';
import type { Unsubscribe } from '../../domain/ports/unsubscribe';
import { panId } from '../../domain/records/rack-records';

const channelName = 'ringwright-rack';

export class RackChanges {
  readonly #listeners = new Set<(change: RackChange) => void>();
  #channel: BroadcastChannel | null = null;

  onChange(listener: (change: RackChange) => void): Unsubscribe {
    this.#listeners.add(listener);
    this.#open();
    return () => this.#listeners.delete(listener);
  }

  /** The other windows are told only which pans: they must read them anew whatever was written. */
  announce(change: RackChange): void {
    this.#tell(change);
    this.#open()?.postMessage(change.pans);
  }

  #tell(change: RackChange): void {
    for (const listener of this.#listeners) listener(change);
  }

  /** An old browser has no channel: its other windows then see what is new when they are opened again. */
  #open(): BroadcastChannel | null {
    if (this.#channel || typeof BroadcastChannel === 'undefined') return this.#channel;
    this.#channel = new BroadcastChannel(channelName);
    this.#channel.onmessage = ({ data }: MessageEvent<unknown>) => {
      // Another version of the app may be the one that speaks.
      if (!Array.isArray(data)) return;
      this.#tell({ pans: data.filter((id) => typeof id === 'string').map(panId), own: null });
    };
    return this.#channel;
  }
}
