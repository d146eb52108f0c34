// Looking inside what the bench has just heard, and back to the same bench.
import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Strike } from '../../domain/measurement/strike';
import type { ListenModel } from '../listening/listen-model';
import { noteHeard, type OpenBench } from './open-bench';

export interface BenchInside {
  /** The newest settled strike on the note that is listened for; null before one, and once another listening has begun. */
  readonly newest: ReadonlySignal<Strike | null>;
  /** The way inside it is taken from here. */
  lookInside(): void;
  /** Whether the way inside this strike was taken from here, and leads back here. */
  isLookedInto(strike: Strike): boolean;
  /** The bench is shown: nobody is inside any more. */
  comeBack(): void;
}

export function createBenchInside(
  listen: Pick<ListenModel, 'last' | 'onHeard'>,
  open: ReadonlySignal<OpenBench | null>,
  isOurs: ReadonlySignal<boolean>,
): BenchInside {
  const heard = signal<Strike | null>(null);
  let lookedAt: Strike | null = null;
  listen.onHeard((each) => {
    if (isOurs.value && each.kind === 'strike' && !each.provisional) heard.value = each;
  });
  const newest = computed(() => {
    const last = listen.last.value?.strike ?? null;
    const bench = open.value;
    return bench && last && last === heard.value && last.note === noteHeard(bench) ? last : null;
  });
  return {
    newest,
    lookInside() {
      lookedAt = newest.value;
    },
    isLookedInto: (strike) => strike === lookedAt,
    comeBack() {
      lookedAt = null;
    },
  };
}
