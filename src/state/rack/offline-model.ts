// The copy of the app on the phone and its updates, looked after once the first screen is there.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { AppUpdates, OfflineState } from '../../domain/ports/phone-ports';

export interface OfflineModel {
  readonly state: ReadonlySignal<OfflineState>;
  /** Begins to look after it; resolves once the port is there, or cannot be loaded. */
  begin(): Promise<void>;
  /** Applies the update that waits, if one does. Only when nothing is being measured. */
  apply(): void;
}

export function createOfflineModel(updates: () => Promise<AppUpdates>): OfflineModel {
  const state = signal<OfflineState>({ kind: 'not-ready', wrongAnswer: false });
  let port: AppUpdates | null = null;
  return {
    state,
    async begin() {
      try {
        port = await updates();
      } catch {
        // This part of the app could not be loaded: nothing is promised, and the next start tries again.
        return;
      }
      port.onState((next) => {
        state.value = next;
      });
    },
    apply() {
      port?.apply();
    },
  };
}
