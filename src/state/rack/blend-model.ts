// Two pans of one section against each other: how they stand now is read when somebody asks.
import { type ReadonlySignal, signal } from '@preact/signals';
import type { PanStore, StoreTrouble } from '../../domain/ports/pan-store';
import type { CardSettings } from '../../domain/rack/card-settings';
import { blendOf, type NoteBlend } from '../../domain/rack/section-blend';
import type { PanId } from '../../domain/records/rack-records';
import { currentPan } from '../../domain/records/standing/current-pan';
import { baseRound, mostLookedThrough } from '../../domain/rounds/base-round';
import { newestFinishedRounds } from '../../domain/rounds/finished-rounds';
import type { JudgedPan } from '../../domain/rounds/judged-pan';
import { panNow } from '../../domain/rounds/pan-now';
import { createLatest } from '../asking/latest';
import type { OpenView } from '../asking/open-view';
import { readBack } from '../keeping/read-back';

/** The pans that were compared last, and what came of it. */
export interface Blend {
  readonly first: PanId;
  readonly second: PanId;
  readonly view: OpenView<{ readonly notes: readonly NoteBlend[] }>;
}

export interface BlendModel {
  /** Null before anything was compared. */
  readonly blend: ReadonlySignal<Blend | null>;
  compare(first: PanId, second: PanId): Promise<void>;
}

export interface BlendPorts {
  readonly store: Pick<PanStore, 'pan' | 'readingsOfRound' | 'readingsOutside'>;
  readonly judging: ReadonlySignal<CardSettings>;
}

export function createBlendModel({ store, judging }: BlendPorts): BlendModel {
  const blend = signal<Blend | null>(null);
  const latest = createLatest();

  /** How a pan stands now, or null before its first finished round. */
  const newest = async (pan: PanId): Promise<JudgedPan | null | StoreTrouble> => {
    const records = await store.pan(pan);
    if (records.kind === 'trouble') return records.trouble;
    const rounds = newestFinishedRounds(records.value, mostLookedThrough);
    const { layout } = currentPan(records.value).fields;
    const { erasures } = records.value;
    const readings = await readBack(store, { rounds, layout, erasures, full: 1 });
    if (readings.kind === 'trouble') return readings.trouble;
    const start = baseRound(rounds, readings.readings, layout);
    if (!start) return null;
    const outside = await store.readingsOutside(pan, start);
    if (outside.kind === 'trouble') return outside.trouble;
    return panNow(start, [...readings.readings, ...outside.value], records.value, judging.value);
  };

  return {
    blend,
    async compare(first, second) {
      const isLatest = latest.begin();
      const show = (view: Blend['view']): void => {
        blend.value = { first, second, view };
      };
      show({ kind: 'loading' });
      const [one, other] = await Promise.all([newest(first), newest(second)]);
      if (!isLatest()) return;
      if (typeof one === 'string') show({ kind: 'trouble', trouble: one });
      else if (typeof other === 'string') show({ kind: 'trouble', trouble: other });
      else show({ kind: 'open', notes: one && other ? blendOf(one, other) : [] });
    },
  };
}
