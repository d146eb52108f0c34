// One note of the open pan through time: its readings as they are read from the rack.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { PanStore } from '../../domain/ports/pan-store';
import type { PanId, ReadingRecord } from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';

export type NoteView = OpenView<{
  readonly note: MidiNote;
  /** All of them, erased ones too, oldest first. */
  readonly readings: readonly ReadingRecord[];
}>;

export interface NoteModel {
  readonly view: ReadonlySignal<NoteView>;
  /** What is shown of the same note stays until the reading is done. */
  read(pan: PanId, note: MidiNote): Promise<void>;
}

export function createNoteModel({
  store,
}: {
  readonly store: Pick<PanStore, 'readingsOfNote'>;
}): NoteModel {
  const view = signal<NoteView>({ kind: 'loading' });
  let shown = '';
  const latest = createLatest();
  return {
    view,
    async read(pan, note) {
      const isLatest = latest.begin();
      const wanted = `${pan} ${note}`;
      if (wanted !== shown) view.value = { kind: 'loading' };
      shown = wanted;
      const loaded = await store.readingsOfNote(pan, note);
      if (!isLatest()) return;
      view.value =
        loaded.kind === 'trouble' ? loaded : { kind: 'open', note, readings: loaded.value };
    },
  };
}
