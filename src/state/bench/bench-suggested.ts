// What was suggested before the set of blows that would be logged: by then the advice itself has moved on.
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { SuggestedBlows } from '../../domain/advice/advice';
import { isAwaiting, newestStep, setToLog } from '../../domain/bench/bench-course';
import type { Instant } from '../../domain/tuning/units';
import type { BenchAdvice } from './bench-advice';
import type { OpenBench } from './open-bench';

/** Null where nothing was suggested for that set. */
export function followSuggested(
  open: ReadonlySignal<OpenBench | null>,
  advice: ReadonlySignal<BenchAdvice | null>,
): ReadonlySignal<SuggestedBlows | null> {
  const before = signal<{ readonly at: Instant; readonly blows: SuggestedBlows } | null>(null);
  effect(() => {
    const course = open.value?.course;
    const said = advice.value?.advice;
    const set = course && isAwaiting(course) ? newestStep(course).blows : null;
    if (set && said?.kind === 'blows') before.value = { at: set.at, blows: said };
  });
  return computed(() => {
    const course = open.value?.course;
    if (!course) return null;
    const said = advice.value?.advice;
    if (setToLog(course) === 'unheard') return said?.kind === 'blows' ? said : null;
    return before.value?.at === newestStep(course).blows?.at ? (before.value?.blows ?? null) : null;
  });
}
