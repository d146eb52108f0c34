// Which other notes may be moved by work on a note, or ring along with it, and must be measured again afterwards.
import type { PanLayout } from '../pans/layout';
import { neighboursOf } from '../pans/neighbours';
import { type PartialKind, ringPairs, ringPartnersOf } from '../pans/ring-partners';
import type { MidiNote } from '../tuning/units';

export type DisturbedNote =
  /** Shares a border: `border` is its length as a part of the rim's radius. */
  | { readonly kind: 'neighbour'; readonly note: MidiNote; readonly border: number }
  /** Sounds along: the worked note's partial `own` is one of this note's. */
  | { readonly kind: 'ring-partner'; readonly note: MidiNote; readonly own: PartialKind };

/** Neighbours first, longest border first, then ring partners, strongest coupling first; each note once. */
export function notesDisturbedBy(layout: PanLayout, note: MidiNote): readonly DisturbedNote[] {
  const neighbours = neighboursOf(layout, note).map(
    (each): DisturbedNote => ({ kind: 'neighbour', ...each }),
  );
  const partners = ringPartnersOf(note, ringPairs(layout)).map(
    ({ own, other }): DisturbedNote => ({ kind: 'ring-partner', note: other.note, own }),
  );
  const seen = new Set<MidiNote>([note]);
  return [...neighbours, ...partners].filter((each) => !seen.has(each.note) && seen.add(each.note));
}
