// What a change to a layout returns.
import type { NotePlace, PanLayout } from './layout';

export type EditRefusal =
  /** The pan has this note already. */
  | 'doubled'
  /** No such note or drum on this pan. */
  | 'unknown'
  /** A drum that still holds notes. */
  | 'not-empty';

export type EditResult =
  | { readonly kind: 'done'; readonly layout: PanLayout }
  | { readonly kind: 'refused'; readonly why: EditRefusal };

export const done = (layout: PanLayout): EditResult => ({ kind: 'done', layout });
export const refused = (why: EditRefusal): EditResult => ({ kind: 'refused', why });

/** The layout with other notes on one drum. */
export const withNotes = (
  layout: PanLayout,
  drum: number,
  notes: readonly NotePlace[],
): PanLayout => ({
  ...layout,
  drums: layout.drums.map((before, k) => (k === drum ? { ...before, notes } : before)),
});
