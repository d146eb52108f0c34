// A rack whose adapter loads when it is first used: the first screen does not wait for what only the others need.
import type { PanStore } from '../../domain/ports/pan-store';

/** Passes every call on to the store that `load` brings; what cannot be loaded is a trouble like any other. */
export function latePanStore(load: () => Promise<PanStore>): PanStore {
  let loading: Promise<PanStore> | null = null;
  const store = (): Promise<PanStore> => {
    loading ??= load().catch((error: unknown) => {
      // The next call tries again.
      loading = null;
      throw error;
    });
    return loading;
  };
  const failed = { kind: 'trouble', trouble: 'failed' } as const;
  const passOn = async <T>(call: (store: PanStore) => Promise<T>): Promise<T | typeof failed> => {
    try {
      return await call(await store());
    } catch {
      return failed;
    }
  };
  return {
    cards: () => passOn((each) => each.cards()),
    keepCard: (card, madeFrom) => passOn((each) => each.keepCard(card, madeFrom)),
    pan: (pan) => passOn((each) => each.pan(pan)),
    readingsOfRound: (round) => passOn((each) => each.readingsOfRound(round)),
    readingsOfNote: (pan, note) => passOn((each) => each.readingsOfNote(pan, note)),
    keep: (records, attachments) => passOn((each) => each.keep(records, attachments)),
    attachment: (id) => passOn((each) => each.attachment(id)),
    size: () => passOn((each) => each.size()),
    onChange(listener) {
      let isOver = false;
      let stop = () => {};
      store().then(
        (each) => {
          if (!isOver) stop = each.onChange(listener);
        },
        // Whoever reads or writes is told; there is nothing to listen to.
        () => undefined,
      );
      return () => {
        isOver = true;
        stop();
      };
    },
  };
}
