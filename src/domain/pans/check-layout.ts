// Finds what is wrong with a layout: notes missing or doubled, ovals outside the rim or over each other.
import { type MidiNote, midiNote } from '../tuning/units';
import { type NotePlace, notesOf, type PanLayout } from './layout';
import { isInside, middleOfNote, outlineOf } from './note-outline';

export type LayoutFault =
  | { readonly kind: 'missing'; readonly note: MidiNote }
  | { readonly kind: 'doubled'; readonly note: MidiNote }
  | { readonly kind: 'over-rim'; readonly note: MidiNote }
  | { readonly kind: 'overlap'; readonly note: MidiNote; readonly other: MidiNote };

/** An oval that touches the rim is within it: rounding puts such a point up to some 10⁻¹⁶ outside. */
const rim = 1 + 1e-9;

/** Faults of a layout; empty if it is chromatic without gaps and can be drawn. Total: it never throws. */
export function checkLayout(layout: PanLayout): readonly LayoutFault[] {
  return [
    ...faultsOfNotes(notesOf(layout)),
    ...layout.drums.flatMap(({ notes }) => faultsOfPlaces(notes)),
  ];
}

const faultsOfNotes = (notes: readonly MidiNote[]): readonly LayoutFault[] =>
  notes.flatMap((note, k): readonly LayoutFault[] => {
    const before = notes[k - 1];
    if (before === undefined) return [];
    if (note === before) return [{ kind: 'doubled', note }];
    return Array.from({ length: note - before - 1 }, (_, missing) => ({
      kind: 'missing',
      note: midiNote(before + 1 + missing),
    }));
  });

const faultsOfPlaces = (places: readonly NotePlace[]): readonly LayoutFault[] =>
  places.flatMap((place, k): readonly LayoutFault[] => {
    const outline = outlineOf(place);
    const isOver = outline.some(([x, y]) => Math.hypot(x, y) > rim);
    const over = places
      .slice(k + 1)
      .filter(
        (other) =>
          areNear(place, other) &&
          (outline.some((point) => isInside(other, point)) ||
            outlineOf(other).some((point) => isInside(place, point))),
      );
    return [
      ...(isOver ? [{ kind: 'over-rim', note: place.note } as const] : []),
      ...over.map((other) => ({ kind: 'overlap', note: place.note, other: other.note }) as const),
    ];
  });

/** Settles most pairs without looking at their outlines. */
function areNear(one: NotePlace, other: NotePlace): boolean {
  const [x, y] = middleOfNote(one);
  const [otherX, otherY] = middleOfNote(other);
  return Math.hypot(otherX - x, otherY - y) < reachOf(one) + reachOf(other);
}

const reachOf = ({ along, across }: NotePlace): number => Math.max(along, across);
