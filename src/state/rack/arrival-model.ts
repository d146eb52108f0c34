// The file that somebody shared with the app, or opened with it: it waits until the user has said what becomes of it.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { Arrivals, ShareRefusal } from '../../domain/ports/arrivals';
import type { FileOnHand } from '../../domain/ports/file-handout';
import { loadOnce } from '../asking/load-once';

export interface ArrivalModel {
  readonly waiting: ReadonlySignal<FileOnHand | null>;
  /** Why what was shared last did not come in. */
  readonly refused: ReadonlySignal<ShareRefusal | null>;
  /** Looks at what is waiting. */
  look(): Promise<void>;
  /** The file that waits is not needed any more; the next one, if any, waits then. */
  letGo(): Promise<void>;
}

export interface ArrivalPorts {
  readonly arrivals: () => Promise<Arrivals>;
  /** Called when a file has come while the app was open. */
  readonly onArrival: () => void;
}

/** The port is asked for once, and listened to from then on. */
export function createArrivalModel({ arrivals, onArrival }: ArrivalPorts): ArrivalModel {
  const waiting = signal<FileOnHand | null>(null);
  const refused = signal<ShareRefusal | null>(null);
  const open = loadOnce(async () => {
    const port = await arrivals();
    port.onArrival(() => {
      void show(port).then(onArrival);
    });
    return port;
  });
  const show = async (port: Arrivals): Promise<void> => {
    refused.value = await port.refused();
    waiting.value = await port.waiting();
  };
  return {
    waiting,
    refused,
    async look() {
      try {
        await show(await open());
      } catch {
        // This part of the app could not be loaded: the next look tries again.
      }
    },
    async letGo() {
      const file = waiting.value;
      if (!file) return;
      const port = await open();
      await port.letGo(file);
      await show(port);
    },
  };
}
