// Several pans at once: their sheets for the tuner, and another owner for all of them.
import { type ReadonlySignal, signal } from '@preact/signals';
import { knockSigns, type ReadingsByRound } from '../../domain/knock-check/round-signs';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import {
  type PanId,
  type ReadingRecord,
  type RoundStart,
  roundOf,
} from '../../domain/records/rack-records';
import { editOf } from '../../domain/records/standing/current-pan';
import { readingsWithoutErased } from '../../domain/records/standing/without-erased';
import { panNow } from '../../domain/rounds/pan-now';
import { resultOf } from '../../domain/rounds/result-of-round';
import { makeSheet, sheetRounds } from '../../domain/sheet/make-sheet';
import type { Sheet } from '../../domain/sheet/sheet';
import { createLatest } from '../asking/latest';
import { type HeadPorts, newHead } from '../keeping/new-head';
import { createRecordKeeper, type RecordKeeper } from '../keeping/record-keeper';

export type Sheets =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly done: number; readonly all: number }
  | { readonly kind: 'ready'; readonly sheets: readonly Sheet[] }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble };

export interface SeveralModel extends Pick<RecordKeeper, 'saving' | 'retry'> {
  readonly sheets: ReadonlySignal<Sheets>;
  /** Makes the sheets of these pans, in this order. */
  make(pans: readonly PanId[]): Promise<void>;
  /** Resolves once all of them have this owner, or to why they have not. */
  moveTo(pans: readonly PanId[], owner: string): Promise<StoreTrouble | null>;
  /** Forgets the sheets. */
  leave(): void;
}

export interface SeveralPorts extends HeadPorts {
  readonly store: Pick<PanStore, 'pan' | 'readingsOfRound' | 'readingsOutside' | 'keep'>;
  readonly settings: {
    readonly judging: ReadonlySignal<CardSettings>;
    readonly contact: ReadonlySignal<string>;
  };
}

export function createSeveralModel(ports: SeveralPorts): SeveralModel {
  const { store, settings, clock } = ports;
  const keeper = createRecordKeeper(store);
  const sheets = signal<Sheets>({ kind: 'none' });
  const latest = createLatest();

  const sheetOf = async (id: PanId): Promise<Sheet | StoreTrouble> => {
    const loaded = await store.pan(id);
    if (loaded.kind === 'trouble') return loaded.trouble;
    const records = loaded.value;
    const rounds = sheetRounds(records);
    const { shown, before, knock } = rounds;
    const wanted = [...new Set([shown, before, ...knock])].filter((round) => round !== null);
    const readings = new Map<ReturnType<typeof roundOf>, readonly ReadingRecord[]>();
    for (const round of wanted) {
      const read = await store.readingsOfRound(roundOf(round));
      if (read.kind === 'trouble') return read.trouble;
      readings.set(roundOf(round), readingsWithoutErased(read.value, records.erasures));
    }
    const outside = await store.readingsOutside(id, shown);
    if (outside.kind === 'trouble') return outside.trouble;
    const judging = settings.judging.value;
    const of = (round: RoundStart | null): readonly ReadingRecord[] =>
      (round && readings.get(roundOf(round))) ?? [];
    const since = readingsWithoutErased(outside.value, records.erasures);
    return makeSheet({
      records,
      rounds,
      standing: panNow(shown, [...of(shown), ...since], records, judging),
      before: before && resultOf(before, of(before), records, judging),
      heard: knockSigns(
        records,
        readings satisfies ReadingsByRound,
        judging.limits.highestWithPartials,
      ),
      judging,
      contact: settings.contact.value,
      now: clock.now(),
    });
  };

  return {
    sheets,
    saving: keeper.saving,
    retry: keeper.retry,
    async make(pans) {
      const isLatest = latest.begin();
      const made: Sheet[] = [];
      for (const [done, pan] of pans.entries()) {
        sheets.value = { kind: 'reading', done, all: pans.length };
        const sheet = await sheetOf(pan);
        if (!isLatest()) return;
        if (typeof sheet === 'string') {
          sheets.value = { kind: 'trouble', trouble: sheet };
          return;
        }
        made.push(sheet);
      }
      sheets.value = { kind: 'ready', sheets: made };
    },
    async moveTo(pans, owner) {
      const edits = [];
      for (const pan of pans) {
        const loaded = await store.pan(pan);
        if (loaded.kind === 'trouble') return loaded.trouble;
        edits.push(editOf(pan, loaded.value, { owner: owner.trim() }, newHead(pan, ports)));
      }
      await keeper.keep(edits);
      return null;
    },
    leave() {
      latest.drop();
      sheets.value = { kind: 'none' };
    },
  };
}
