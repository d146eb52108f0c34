// Where a drum has room for one more note, and in which ring a spot lies.
import type { MidiNote } from '../tuning/units';
import type { NotePlace } from './layout';
import { depthIn, furthestRadius, middleOfNote } from './note-outline';
import type { OvalSize } from './place-notes';

export type Spot = Pick<NotePlace, 'clock' | 'radius' | 'ring' | 'along' | 'across'>;

/** The ring that an oval lies in: along the rim, round the drum's middle, or between the two. */
export function ringOf({
  radius,
  across,
}: Pick<NotePlace, 'radius' | 'across'>): NotePlace['ring'] {
  const edge = radius + across;
  if (edge >= 0.85) return 'outer';
  return edge < 0.45 ? 'centre' : 'middle';
}

/** The spot with most room on a drum with `others`, for an oval as large as that of the note nearest in pitch. */
export function freeSpot(
  others: readonly NotePlace[],
  note: MidiNote,
  size: OvalSize = sizeLike(others, note),
): Spot {
  const { along, across } = size;
  let best = { clock: 6, radius: 0, room: Number.NEGATIVE_INFINITY };
  for (const part of [1, 0.85, 0.7, 0.55, 0.4, 0.25, 0]) {
    for (let clock = 0.5; clock <= 12; clock += 0.5) {
      const spot = { clock, radius: part * furthestRadius(size) };
      const room = roomAt(spot, others, size);
      if (room > best.room + 1e-9) best = { ...spot, room };
    }
  }
  const { clock, radius } = best;
  return { clock, radius, along, across, ring: ringOf({ radius, across }) };
}

/** Room between an oval and its nearest neighbour, roughly, in parts of the rim's radius; negative where they overlap. */
function roomAt(
  spot: Pick<NotePlace, 'clock' | 'radius'>,
  others: readonly NotePlace[],
  size: OvalSize,
): number {
  const middle = middleOfNote(spot);
  const reach = Math.sqrt(size.along * size.across);
  return Math.min(
    2,
    ...others.map(
      (other) => (depthIn(other, middle) - 1) * Math.sqrt(other.along * other.across) - reach,
    ),
  );
}

function sizeLike(others: readonly NotePlace[], note: MidiNote): OvalSize {
  const nearest = [...others].sort((a, b) => Math.abs(a.note - note) - Math.abs(b.note - note))[0];
  return nearest ? { along: nearest.along, across: nearest.across } : { along: 0.25, across: 0.18 };
}
