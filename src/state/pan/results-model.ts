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
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';

/** Of the rounds that were asked for last. */
export interface RoundsRead {
  readonly results: ReadonlyMap<RoundId, RoundResult>;
  readonly readings: ReadonlyMap<RoundId, readonly ReadingRecord[]>;
}

export type ResultsView = OpenView<RoundsRead>;

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
  const latest = createLatest();

  const view = computed((): ResultsView => {
    const { value } = read;
    if (value === null) return { kind: 'loading' };
    if (typeof value === 'string') return { kind: 'trouble', trouble: value };
    const { records, rounds } = value;
    const settings = judging.value;
    return {
      kind: 'open',
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
      const isLatest = latest.begin();
      if (panShown() !== records.pan) read.value = null;
      const loaded = await Promise.all(
        rounds.map((start) => store.readingsOfRound(roundOf(start))),
      );
      if (!isLatest()) return;
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
