// The results of a pan's rounds: read when a screen wants them, judged anew whenever the settings change.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import {
  type PanRecords,
  type ReadingRecord,
  type RoundId,
  type RoundStart,
  roundOf,
} from '../../domain/records/rack-records';
import { readingsWithoutErased } from '../../domain/records/standing/without-erased';
import { resultOf } from '../../domain/rounds/result-of-round';
import type { RoundResult } from '../../domain/rounds/round-result';

export type ResultsView =
  | { readonly kind: 'loading' }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble }
  | {
      readonly kind: 'ready';
      /** Of the rounds that were asked for last. */
      readonly results: ReadonlyMap<RoundId, RoundResult>;
      readonly readings: ReadonlyMap<RoundId, readonly ReadingRecord[]>;
    };

export interface ResultsModel {
  readonly view: ReadonlySignal<ResultsView>;
  /** Reads these rounds of one pan; what is shown of the same pan stays until they are read. */
  read(records: PanRecords, rounds: readonly RoundStart[]): Promise<void>;
}

export interface ResultsPorts {
  readonly store: Pick<PanStore, 'readingsOfRound'>;
  readonly judging: ReadonlySignal<CardSettings>;
}

interface ReadRounds {
  readonly records: PanRecords;
  readonly rounds: readonly {
    readonly start: RoundStart;
    readonly readings: readonly ReadingRecord[];
  }[];
}

export function createResultsModel({ store, judging }: ResultsPorts): ResultsModel {
  const read = signal<ReadRounds | StoreTrouble | null>(null);
  /** What was asked for later makes an older answer worthless. */
  let turn = 0;

  const view = computed((): ResultsView => {
    const { value } = read;
    if (value === null) return { kind: 'loading' };
    if (typeof value === 'string') return { kind: 'trouble', trouble: value };
    const { records, rounds } = value;
    const settings = judging.value;
    return {
      kind: 'ready',
      results: new Map(
        rounds.map(({ start, readings }) => [
          roundOf(start),
          resultOf(start, readings, records, settings),
        ]),
      ),
      readings: new Map(rounds.map(({ start, readings }) => [roundOf(start), readings])),
    };
  });

  const panShown = () =>
    read.value !== null && typeof read.value !== 'string' ? read.value.records.pan : null;

  return {
    view,
    async read(records, rounds) {
      const mine = ++turn;
      if (panShown() !== records.pan) read.value = null;
      const loaded = await Promise.all(
        rounds.map((start) => store.readingsOfRound(roundOf(start))),
      );
      if (mine !== turn) return;
      const found: ReadRounds['rounds'][number][] = [];
      for (const [k, each] of loaded.entries()) {
        if (each.kind === 'trouble') {
          read.value = each.trouble;
          return;
        }
        const start = rounds[k];
        const readings = readingsWithoutErased(each.value, records.erasures);
        if (start) found.push({ start, readings });
      }
      read.value = { records, rounds: found };
    },
  };
}
