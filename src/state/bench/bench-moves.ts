// Where the bench leads on: to notes that must be measured again, and along the work plan.
import type { WorkPlan } from '../../domain/bench/work-plan';
import type { PanId } from '../../domain/records/rack-records';
import type { MidiNote } from '../../domain/tuning/units';
import { checksOf, type OpenBench } from './open-bench';

/** Where moving on leads. */
export type BenchMove =
  /** Another note is measured again, on this bench. */
  | { readonly kind: 'check'; readonly note: MidiNote }
  /** The next note of the work plan: its bench is to be opened. */
  | { readonly kind: 'note'; readonly pan: PanId; readonly note: MidiNote }
  | { readonly kind: 'done' };

/** The next note to be measured again after the one that is, or null: none is left. */
export function nextCheck(bench: OpenBench): MidiNote | null {
  const checks = checksOf(bench);
  const at = checks.findIndex(({ disturbed }) => disturbed.note === bench.check?.note);
  return checks.slice(at + 1).find(({ now }) => now === null)?.disturbed.note ?? null;
}

/** `work`: the work plan that is followed, if one is. */
export function moveAhead(bench: OpenBench, work: WorkPlan | null): BenchMove {
  const check = nextCheck(bench);
  if (check !== null) return { kind: 'check', note: check };
  const { subject, course } = bench;
  if (subject.kind !== 'pan' || work?.pan !== subject.pan) return { kind: 'done' };
  const note = work.notes[work.notes.indexOf(course.note) + 1];
  return note === undefined ? { kind: 'done' } : { kind: 'note', pan: work.pan, note };
}
