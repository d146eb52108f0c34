// One note of the open pan through time: its readings as they are read from the rack.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { PanId, ReadingRecord } from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';

export type NoteView =
  | { readonly kind: 'loading' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble }
  /** All readings, erased ones too, oldest first. */
  | {
      readonly kind: 'ready';
      readonly note: MidiNote;
      readonly readings: readonly ReadingRecord[];
    };

export interface NoteModel {
  readonly view: ReadonlySignal<NoteView>;
  /** What is shown of the same note stays until it is read. */
  read(pan: PanId, note: MidiNote): Promise<void>;
}

export function createNoteModel({
  store,
}: {
  readonly store: Pick<PanStore, 'readingsOfNote'>;
}): NoteModel {
  const view = signal<NoteView>({ kind: 'loading' });
  let shown = '';
  /** What was asked for later makes an older answer worthless. */
  let turn = 0;
  return {
    view,
    async read(pan, note) {
      const mine = ++turn;
      const wanted = `${pan} ${note}`;
      if (wanted !== shown) view.value = { kind: 'loading' };
      shown = wanted;
      const loaded = await store.readingsOfNote(pan, note);
      if (mine !== turn) return;
      view.value =
        loaded.kind === 'trouble' ? loaded : { kind: 'ready', note, readings: loaded.value };
    },
  };
}
