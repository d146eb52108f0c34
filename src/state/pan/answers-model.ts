// What blows have done on a pan, from the readings of all notes that were hammered.
import { type ReadonlySignal, signal } from '@preact/signals';
import { type PlaceAnswer, panAnswers } from '../../domain/advice/pan-answers';
import type { PanStore } from '../../domain/ports/pan-store';
import type { PanRecords, ReadingRecord } from '../../domain/records/rack-records';
import { withoutErased } from '../../domain/records/standing/without-erased';
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';

export type AnswersView = OpenView<{ readonly answers: readonly PlaceAnswer[] }>;

export interface AnswersModel {
  readonly view: ReadonlySignal<AnswersView>;
  /** Nothing is shown until all of it is read. */
  read(records: PanRecords): Promise<void>;
}

export function createAnswersModel({
  store,
}: {
  readonly store: Pick<PanStore, 'readingsOfNote'>;
}): AnswersModel {
  const view = signal<AnswersView>({ kind: 'loading' });
  const latest = createLatest();
  return {
    view,
    async read(records) {
      const isLatest = latest.begin();
      view.value = { kind: 'loading' };
      const notes = new Set(withoutErased(records).blows.map(({ note }) => note));
      const loaded = await Promise.all(
        [...notes].map((note) => store.readingsOfNote(records.pan, note)),
      );
      if (!isLatest()) return;
      const readings: ReadingRecord[] = [];
      for (const each of loaded) {
        if (each.kind === 'trouble') {
          view.value = each;
          return;
        }
        readings.push(...each.value);
      }
      view.value = { kind: 'open', answers: panAnswers(records, readings) };
    },
  };
}
