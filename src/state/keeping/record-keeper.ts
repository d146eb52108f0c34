// Keeps records one after another and is honest about it: what could not be kept waits and is tried again.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { Attachment, RackRecord } from '../../domain/records/rack-records';
import { sealed } from '../../domain/records/record-digest';

export type Saving =
  | { readonly kind: 'kept' }
  | { readonly kind: 'keeping' }
  | { readonly kind: 'not-kept'; readonly trouble: StoreTrouble };

export type KeepingStore = Pick<PanStore, 'keep'>;

export interface RecordKeeper {
  readonly saving: ReadonlySignal<Saving>;
  /** Resolves once these are on disk, however many tries it takes. */
  keep(records: readonly RackRecord[], attachments?: readonly Attachment[]): Promise<void>;
  /** Tries again what could not be kept. */
  retry(): Promise<void>;
}

interface Waiting {
  readonly records: readonly RackRecord[];
  readonly attachments: readonly Attachment[];
  readonly kept: () => void;
}

export function createRecordKeeper(store: KeepingStore): RecordKeeper {
  const saving = signal<Saving>({ kind: 'kept' });
  let waiting: readonly Waiting[] = [];
  /** Everything that was kept here since the app was opened. */
  let done: readonly RackRecord[] = [];
  let running: Promise<void> | null = null;

  const keepAll = async (): Promise<void> => {
    while (waiting.length > 0) {
      const batch = waiting;
      saving.value = { kind: 'keeping' };
      const result = await store.keep(
        batch.flatMap(({ records }) => records),
        batch.flatMap(({ attachments }) => attachments),
      );
      if (result.kind === 'trouble') {
        // What had been kept before is gone as well: it is saved again with the rest.
        if (result.trouble === 'deleted') {
          waiting = [{ records: done, attachments: [], kept: () => undefined }, ...waiting];
          done = [];
        }
        saving.value = { kind: 'not-kept', trouble: result.trouble };
        return;
      }
      waiting = waiting.slice(batch.length);
      done = [...done, ...batch.flatMap(({ records }) => records)];
      for (const { kept } of batch) kept();
    }
    saving.value = { kind: 'kept' };
  };
  const run = (): Promise<void> => {
    running ??= keepAll().finally(() => {
      running = null;
      // Something came in at the very end.
      if (waiting.length > 0 && saving.value.kind !== 'not-kept') void run();
    });
    return running;
  };

  return {
    saving,
    keep(records, attachments = []) {
      return new Promise((kept) => {
        waiting = [...waiting, { records: records.map(sealed), attachments, kept }];
        void run();
      });
    },
    retry: run,
  };
}

/** True while one of them has something that could not be saved. What is just being saved does not count. */
export const isAnyUnsaved = (
  keepers: readonly Pick<RecordKeeper, 'saving'>[],
): ReadonlySignal<boolean> =>
  computed(() => keepers.some(({ saving }) => saving.value.kind === 'not-kept'));
