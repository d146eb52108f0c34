// In which order several notes of a pan are worked on, and which others are measured again in between.

import { type DisturbedNote, notesDisturbedBy } from '../advice/disturbed-notes';
import type { PanLayout } from '../pans/layout';
import { octaveOrder } from '../rounds/round-order';
import type { MidiNote } from '../tuning/units';

export type WorkStep =
  | { readonly kind: 'work'; readonly note: MidiNote }
  /** Measured again because of the work on `because`, the latest last. */
  | { readonly kind: 'check'; readonly note: MidiNote; readonly because: readonly MidiNote[] };

/**
 * The steps of working on notes in this order (the proposed one or the user's), with the re-checks folded in: a note
 * that will be worked on later is measured then; any other is checked once, after the last work that may have moved it.
 */
export function workSteps(layout: PanLayout, order: readonly MidiNote[]): readonly WorkStep[] {
  const works = [...new Set(order)];
  const causes = new Map<MidiNote, MidiNote[]>();
  works.forEach((note, k) => {
    for (const { note: other } of notesDisturbedBy(layout, note)) {
      if (works.indexOf(other) > k) continue;
      causes.set(other, [...(causes.get(other) ?? []), note]);
    }
  });
  return works.flatMap((note): WorkStep[] => {
    const checks = [...causes].filter(([, because]) => because.at(-1) === note);
    const inOrder = octaveOrder(checks.map(([other]) => other));
    return [
      { kind: 'work', note },
      ...inOrder.map(
        (other): WorkStep => ({ kind: 'check', note: other, because: causes.get(other) ?? [] }),
      ),
    ];
  });
}

/** What must be measured again after work on a note, the likeliest to have moved first. */
export const recheckList = (layout: PanLayout, note: MidiNote): readonly DisturbedNote[] =>
  notesDisturbedBy(layout, note);
