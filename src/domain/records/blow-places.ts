// Where on a note, from which side and how firmly it is hammered. The axes are those of the note's oval.

/**
 * `long-ends` and `short-ends` are the two ends of an axis, `corners` the four spots between the axes, `border` is
 * all around the note. The glancing ones are drawn along an axis instead of falling straight.
 */
export const blowPlaces = [
  'middle',
  'long-ends',
  'short-ends',
  'corners',
  'border',
  'glancing-long',
  'glancing-short',
] as const;
export type BlowPlace = (typeof blowPlaces)[number];

/** Above is the playing side. */
export const blowSides = ['above', 'below'] as const;
export type BlowSide = (typeof blowSides)[number];

export const blowFirmnesses = ['light', 'firm'] as const;
export type BlowFirmness = (typeof blowFirmnesses)[number];

/** Blows of one set all fall at one place. */
export interface BlowWhere {
  readonly place: BlowPlace;
  readonly side: BlowSide;
}

export const allWheres: readonly BlowWhere[] = blowPlaces.flatMap((place) =>
  blowSides.map((side) => ({ place, side })),
);

/** Number of light blows assumed where nobody heard how many (own choice: a few). */
export const usualCount = 3;
/** How many light blows do as much as a firm one (own guess, no source). */
const firmWorth = 2;

/** What one blow does, 1 for a light one. */
export const worthOf = (firmness: BlowFirmness): number => (firmness === 'firm' ? firmWorth : 1);

/** How much a set does, Strength: 1 for the usual number of light blows. The response model is linear in it. */
export const strengthOf = (firmness: BlowFirmness, count: number | null): number =>
  ((count ?? usualCount) / usualCount) * worthOf(firmness);

/** How hard a set is, and whether it came from few firm blows or many light ones. */
export interface SetForce {
  readonly firmness: BlowFirmness;
  /** As in `strengthOf`. */
  readonly strength: number;
}
