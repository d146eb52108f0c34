// Which bench is shown when a note is put on it, and what of the one before it goes on.

import { courseAfter } from '../../domain/bench/bench-course';
import type { CardSettings } from '../../domain/rack/card-settings';
import { cents } from '../../domain/tuning/units';
import type { BenchSubject, OpenBench } from './open-bench';

export function isSameSubject(one: BenchSubject, other: BenchSubject): boolean {
  if (one.note !== other.note || one.kind !== other.kind) return false;
  if (one.kind === 'pan' && other.kind === 'pan') return one.pan === other.pan;
  return !(one.kind === 'practice' && other.kind === 'practice') || one.source === other.source;
}

/** The bench of a note of which nothing is kept; `shown` is the one before it. */
export function unkeptBench(
  subject: Exclude<BenchSubject, { readonly kind: 'pan' }>,
  { a4 }: CardSettings,
  shown: OpenBench | null,
): OpenBench {
  // What was learnt on one note of a simulated pan helps with its others.
  const isSamePan =
    subject.kind === 'practice' &&
    shown?.subject.kind === 'practice' &&
    shown.subject.source === subject.source;
  return {
    subject,
    around: isSamePan
      ? shown.around
      : {
          name: '',
          layout: subject.kind === 'practice' ? subject.source.layout : null,
          a4,
          reference: cents(0),
          marks: new Map(),
          readings: [],
          blows: [],
        },
    course: courseAfter(subject.note, []),
    check: null,
  };
}

/** A bench that is shown already, with what its pan's records say now; what is still being written is in it. */
export function broughtUpToDate(shown: OpenBench, read: OpenBench): OpenBench {
  const merged = <T extends { readonly id: string }>(kept: readonly T[], own: readonly T[]) => {
    const ids = new Set(kept.map(({ id }) => id));
    return [...kept, ...own.filter(({ id }) => !ids.has(id))];
  };
  return {
    ...shown,
    check: null,
    around: {
      ...read.around,
      readings: merged(read.around.readings, shown.around.readings),
      blows: merged(read.around.blows, shown.around.blows),
    },
  };
}
