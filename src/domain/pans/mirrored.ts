// Mirror images: left-handed pans, and bands whose pans are the opposite of many.
import type { Drum, NotePlace, PanLayout } from './layout';
import { hourOf } from './note-outline';

const ending = '-mirrored';
const nameEnding = ', mirrored';

/** The layout as in a mirror standing beside it: each drum, and the drums among each other. Twice gives it back. */
export function mirrored(layout: PanLayout): PanLayout {
  const isMirrored = layout.id.endsWith(ending);
  return {
    ...layout,
    id: isMirrored ? layout.id.slice(0, -ending.length) : `${layout.id}${ending}`,
    name: layout.name.endsWith(nameEnding)
      ? layout.name.slice(0, -nameEnding.length)
      : `${layout.name}${nameEnding}`,
    drums: layout.drums.map((drum, k) => ({
      ...drum,
      notes: mirroredNotes((layout.drums[mirrorOf(layout.drums, k)] ?? drum).notes),
    })),
  };
}

export const mirroredNotes = (notes: readonly NotePlace[]): readonly NotePlace[] =>
  notes.map((place) => ({ ...place, clock: hourOf(12 - place.clock) }));

/** The drum whose place drum `k` takes: "far left" and "far right" change, drums without a side stand in a row. */
function mirrorOf(drums: readonly Drum[], k: number): number {
  const names = drums.map(({ name }) => name);
  if (!names.some((name) => /left|right/.test(name))) return names.length - 1 - k;
  const partner = names[k]?.replace(/left|right/, (side) => (side === 'left' ? 'right' : 'left'));
  const found = names.indexOf(partner ?? '');
  return found < 0 ? k : found;
}
