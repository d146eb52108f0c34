// Whether anything that was made waits because it could not be saved.
import { computed, type ReadonlySignal } from '@preact/signals';
import type { RecordKeeper } from './record-keeper';

type Saver = Pick<RecordKeeper, 'saving'>;

/** True while one of them has something that is on no disk. What is just being saved is not meant. */
export const isAnyUnsaved = (keepers: readonly Saver[]): ReadonlySignal<boolean> =>
  computed(() => keepers.some(({ saving }) => saving.value.kind === 'not-kept'));
