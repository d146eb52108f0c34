// A neutral starting arrangement for pans whose note places are published nowhere: the player arranges the rest.
import type { MidiNote } from '../tuning/units';
import type { Drum, NotePlace } from './layout';
import { hourOf } from './note-outline';

interface Circle {
  readonly ring: NotePlace['ring'];
  readonly count: number;
  readonly radius: number;
  readonly along: number;
  readonly across: number;
  /** Hour of its first note. */
  readonly from: number;
}

/**
 * Deals the notes, lowest first, to the drums in turn; on each drum they lie clockwise from the player, the lower
 * ones along the rim. Four drums get augmented triads that way, two get whole-tone scales.
 */
export function spreadOnDrums(
  notes: readonly MidiNote[],
  drumCount: number,
  nameOf: (drum: number) => string = (drum) => String(drum + 1),
): readonly Drum[] {
  const ordered = [...notes].sort((low, high) => low - high);
  return Array.from({ length: drumCount }, (_, drum) => ({
    name: nameOf(drum),
    notes: spreadOnDrum(ordered.filter((_, k) => k % drumCount === drum)),
  }));
}

/** Notes of one drum, lowest first, in up to three circles. */
function spreadOnDrum(notes: readonly MidiNote[]): readonly NotePlace[] {
  const spots = circlesFor(notes.length).flatMap((circle) =>
    Array.from({ length: circle.count }, (_, k) => ({
      ring: circle.ring,
      clock: hourOf(circle.from + (12 * k) / circle.count),
      radius: circle.radius,
      ...shrunk(circle, k / Math.max(1, circle.count)),
    })),
  );
  return notes.flatMap((note, k) => {
    const spot = spots[k];
    return spot ? [{ note, ...spot }] : [];
  });
}

/** On a circle the higher notes are smaller, as on every pan: down to four fifths of the lowest. */
function shrunk({ along, across }: Circle, part: number): { along: number; across: number } {
  const by = 1 - 0.2 * part;
  return { along: Math.max(thinnest, along * by), across: Math.max(thinnest, across * by) };
}

/** A name and a number must fit inside (as in `place-notes`). */
const thinnest = 0.093;

/** Circles with room for `count` notes; every note keeps 44 px for a finger where the drum is 320 px wide. */
function circlesFor(count: number): readonly Circle[] {
  const outer = (along: number, across: number, radius = 0.97 - across) =>
    ({ ring: 'outer', from: 6, radius, along, across }) as const;
  const middle = { ring: 'middle', from: 6.5 } as const;
  const centre = { ring: 'centre', from: 12 } as const;
  if (count <= 1) return [{ ...outer(0.5, 0.4, 0), count }];
  // Near enough to the middle that three such drums fit side by side on a small screen.
  if (count <= 3) return [{ ...outer(0.42, 0.36, 0.54), count }];
  if (count <= 4) return [{ ...outer(0.38, 0.3), count }];
  if (count <= 6) return [{ ...outer(0.33, 0.24), count }];
  if (count <= 10) {
    return [
      { ...outer(0.31, 0.2), count: 6 },
      { ...middle, radius: 0.33, along: 0.2, across: 0.17, count: count - 6 },
    ];
  }
  if (count <= 16) {
    return [
      { ...outer(0.23, 0.16), count: 9 },
      { ...middle, radius: 0.44, along: 0.17, across: 0.14, count: Math.min(6, count - 9) },
      { ...centre, radius: 0, along: 0.12, across: 0.12, count: Math.max(0, count - 15) },
    ];
  }
  return [
    { ...outer(0.19, 0.13), count: 12 },
    {
      ...middle,
      from: 6,
      radius: 0.548,
      along: 0.12,
      across: 0.105,
      count: Math.min(12, count - 12),
    },
    { ...centre, radius: 0.26, along: 0.095, across: 0.093, count: Math.max(0, count - 24) },
  ];
}
