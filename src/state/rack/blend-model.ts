// Two pans of one section against each other: their newest rounds are read when somebody asks.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import { blendOf, type NoteBlend } from '../../domain/rack/section-blend';
import { type PanId, roundOf } from '../../domain/records/rack-records';
import { readingsWithoutErased } from '../../domain/records/standing/without-erased';
import { newestFinishedRounds } from '../../domain/rounds/finished-rounds';
import { resultOf } from '../../domain/rounds/result-of-round';
import type { RoundResult } from '../../domain/rounds/round-result';

export type BlendView =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly first: PanId; readonly second: PanId }
  | { readonly kind: 'trouble'; readonly trouble: StoreTrouble }
  | {
      readonly kind: 'ready';
      readonly first: PanId;
      readonly second: PanId;
      readonly notes: readonly NoteBlend[];
    };

export interface BlendModel {
  readonly view: ReadonlySignal<BlendView>;
  compare(first: PanId, second: PanId): Promise<void>;
}

export interface BlendPorts {
  readonly store: Pick<PanStore, 'pan' | 'readingsOfRound'>;
  readonly judging: ReadonlySignal<CardSettings>;
}

export function createBlendModel({ store, judging }: BlendPorts): BlendModel {
  const view = signal<BlendView>({ kind: 'none' });
  /** What was asked for later makes an older answer worthless. */
  let turn = 0;

  /** The newest finished round of a pan, or null before the first. */
  const newest = async (pan: PanId): Promise<RoundResult | null | StoreTrouble> => {
    const records = await store.pan(pan);
    if (records.kind === 'trouble') return records.trouble;
    const [start] = newestFinishedRounds(records.value, 1);
    if (!start) return null;
    const readings = await store.readingsOfRound(roundOf(start));
    if (readings.kind === 'trouble') return readings.trouble;
    const valid = readingsWithoutErased(readings.value, records.value.erasures);
    return resultOf(start, valid, records.value, judging.value);
  };

  return {
    view,
    async compare(first, second) {
      const mine = ++turn;
      view.value = { kind: 'reading', first, second };
      const [one, other] = await Promise.all([newest(first), newest(second)]);
      if (mine !== turn) return;
      if (typeof one === 'string') view.value = { kind: 'trouble', trouble: one };
      else if (typeof other === 'string') view.value = { kind: 'trouble', trouble: other };
      else {
        const notes = one && other ? blendOf(one, other) : [];
        view.value = { kind: 'ready', first, second, notes };
      }
    },
  };
}
