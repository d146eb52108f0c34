// The order of the soft round after a fall: the side that was hit first, then the opposite one, then the rest.
import type { Drum, PanLayout } from '../pans/layout';
import { notesOf } from '../pans/layout';
import { middleOfNote } from '../pans/note-outline';
import type { ImpactPlace } from '../records/impact-place';
import { octaveOrder } from '../rounds/round-order';
import type { MidiNote } from '../tuning/units';

/**
 * Half the sector, seen from the drum's middle, that belongs to the side that was hit: a sixth of the circle each way
 * (chosen, no source).
 */
const sideReach = Math.PI / 3;
/** A hit nearer to the drum's middle than this has no side, so that only distance counts (chosen, no source). */
const leastRadius = 0.15;

/**
 * All notes of a layout once. Of the drum that was hit: the notes on that side, nearest first; those of the opposite
 * side, because a rim that is pushed in bulges there (common practice, no source), nearest to the far rim first; then
 * its other notes; then the other drums. Without a place the usual order of a round.
 */
export function softOrder(layout: PanLayout, impact: ImpactPlace | null): readonly MidiNote[] {
  const usual = octaveOrder(notesOf(layout));
  const hit = impact && hitOf(layout, impact);
  if (!hit) return usual;
  const { drum, at } = hit;
  const distances = new Map(
    drum.notes.map((place) => [place.note, distance(middleOfNote(place), at)] as const),
  );
  const radius = Math.hypot(...at);
  const nearFirst = (notes: readonly MidiNote[], from: ReadonlyMap<MidiNote, number>) =>
    [...notes].sort((one, other) => (from.get(one) ?? 0) - (from.get(other) ?? 0) || one - other);
  const own = drum.notes.map(({ note }) => note);
  if (radius < leastRadius) return unique([...nearFirst(own, distances), ...usual]);
  const farRim: Point = [-at[0] / radius, -at[1] / radius];
  const fromFarRim = new Map(
    drum.notes.map((place) => [place.note, distance(middleOfNote(place), farRim)] as const),
  );
  const inSector = (towards: Point) =>
    drum.notes
      .filter((place) => angleBetween(middleOfNote(place), towards) <= sideReach)
      .map(({ note }) => note);
  return unique([
    ...nearFirst(inSector(at), distances),
    ...nearFirst(inSector(farRim), fromFarRim),
    ...usual.filter((note) => own.includes(note)),
    ...usual,
  ]);
}

type Point = readonly [number, number];

function hitOf(layout: PanLayout, impact: ImpactPlace): { drum: Drum; at: Point } | null {
  if (impact.kind === 'point') {
    const drum = layout.drums[impact.drum];
    return drum ? { drum, at: middleOfNote(impact) } : null;
  }
  for (const drum of layout.drums) {
    const place = drum.notes.find(({ note }) => note === impact.note);
    if (place) return { drum, at: middleOfNote(place) };
  }
  return null;
}

const distance = (one: Point, other: Point): number =>
  Math.hypot(one[0] - other[0], one[1] - other[1]);

/** The angle at the drum's middle, 0…π; 0 for a note in the very middle. */
function angleBetween(one: Point, other: Point): number {
  const lengths = Math.hypot(...one) * Math.hypot(...other);
  if (lengths === 0) return 0;
  const cosine = (one[0] * other[0] + one[1] * other[1]) / lengths;
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

const unique = (notes: readonly MidiNote[]): readonly MidiNote[] => [...new Set(notes)];
