// Which notes of a drum share a border: blows on one move the others first.
import type { MidiNote } from '../tuning/units';
import type { NotePlace, PanLayout } from './layout';
import { depthIn } from './note-outline';

/** The drum is divided into squares of this size, as a part of the rim's radius (chosen, no source). */
const square = 0.03;
const side = Math.ceil(1 / square);
const width = 2 * side + 1;
/** A border shorter than this is a corner where notes only touch (chosen, no source). */
const shortestBorder = 0.12;

export interface Neighbour {
  readonly note: MidiNote;
  /** Length of the shared border, as a part of the rim's radius. */
  readonly border: number;
}

/** Finding out which notes share borders takes a grid, and every advice needs it: so it is done once for each drum. */
const known = new WeakMap<readonly NotePlace[], ReadonlyMap<MidiNote, readonly Neighbour[]>>();

/** Notes of the same drum that share a border with `note`, longest border first; empty for a note the pan lacks. */
export const neighboursOf = (layout: PanLayout, note: MidiNote): readonly Neighbour[] => {
  const drum = layout.drums.find(({ notes }) => notes.some((place) => place.note === note));
  return drum ? (knownNeighboursOn(drum.notes).get(note) ?? []) : [];
};

function knownNeighboursOn(
  places: readonly NotePlace[],
): ReadonlyMap<MidiNote, readonly Neighbour[]> {
  const before = known.get(places);
  if (before) return before;
  const neighbours = neighboursOn(places);
  known.set(places, neighbours);
  return neighbours;
}

/** The neighbours of every note of a drum. The metal between ovals counts to the note whose outline is nearest. */
export function neighboursOn(
  places: readonly NotePlace[],
): ReadonlyMap<MidiNote, readonly Neighbour[]> {
  const owners = ownersOfSquares(places);
  const count = places.length;
  const steps = new Uint16Array(count * count);
  const meet = (one: number, other: number): void => {
    if (one < 0 || other < 0 || one === other) return;
    for (const at of [one * count + other, other * count + one]) steps[at] = (steps[at] ?? 0) + 1;
  };
  for (let at = 0; at < owners.length; at++) {
    const owner = owners[at] ?? -1;
    if ((at + 1) % width !== 0) meet(owner, owners[at + 1] ?? -1);
    meet(owner, owners[at + width] ?? -1);
  }
  return new Map(
    places.map(({ note }, k) => {
      const beside = places
        .map((other, j) => ({ note: other.note, border: (steps[k * count + j] ?? 0) * square }))
        .filter(({ border }) => border >= shortestBorder);
      return [note, beside.sort((a, b) => b.border - a.border || a.note - b.note)] as const;
    }),
  );
}

/** For each square of the drum, row by row, the index of the place it counts to; −1 outside the rim. */
function ownersOfSquares(places: readonly NotePlace[]): Int16Array {
  const owners = new Int16Array(width * width).fill(-1);
  for (let row = -side; row <= side; row++) {
    for (let column = -side; column <= side; column++) {
      const [x, y] = [column * square, row * square];
      if (Math.hypot(x, y) > 1) continue;
      let least = Number.POSITIVE_INFINITY;
      places.forEach((place, k) => {
        // The distance beyond the outline, in parts of the rim's radius, so that large notes reach no farther than
        // small ones.
        const away = (depthIn(place, [x, y]) - 1) * Math.sqrt(place.along * place.across);
        if (away >= least) return;
        least = away;
        owners[(row + side) * width + column + side] = k;
      });
    }
  }
  return owners;
}
