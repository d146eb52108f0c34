// Changes to the drums of a layout, each giving a new one; nothing throws.
import { done, type EditResult, refused, withNotes } from './edit-result';
import type { PanLayout } from './layout';
import { mirroredNotes } from './mirrored';
import { hourOf } from './note-outline';

/** Turns a drum clockwise by some hours. */
export const turnDrum = (layout: PanLayout, drum: number, hours: number): PanLayout =>
  withNotes(
    layout,
    drum,
    (layout.drums[drum]?.notes ?? []).map((place) => ({
      ...place,
      clock: hourOf(place.clock + hours),
    })),
  );

/** One drum as in a mirror; the others stay as they are (for the whole pan: `mirrored`). */
export const mirrorDrum = (layout: PanLayout, drum: number): PanLayout =>
  withNotes(layout, drum, mirroredNotes(layout.drums[drum]?.notes ?? []));

/** Swaps two drums. The places keep their names: what stood on the left now stands on the right. */
export function swapDrums(layout: PanLayout, one: number, other: number): PanLayout {
  const [first, second] = [layout.drums[one], layout.drums[other]];
  if (!first || !second) return layout;
  return withNotes(withNotes(layout, one, second.notes), other, first.notes);
}

/** One more drum, empty, after the last one. */
export const addDrum = (layout: PanLayout): PanLayout => {
  const names = new Set(layout.drums.map(({ name }) => name));
  let number = layout.drums.length + 1;
  while (names.has(String(number))) number++;
  return { ...layout, drums: [...layout.drums, { name: String(number), notes: [] }] };
};

/** Takes an empty drum away; the last drum stays. */
export function removeDrum(layout: PanLayout, drum: number): EditResult {
  const target = layout.drums[drum];
  if (!target || layout.drums.length === 1) return refused('unknown');
  if (target.notes.length > 0) return refused('not-empty');
  return done({ ...layout, drums: layout.drums.filter((_, k) => k !== drum) });
}
