// Where a pan was hit when it fell.
import type { MidiNote } from '../tuning/units';

/** A point on a drum, measured like the place of a note. */
export interface ImpactPoint {
  readonly kind: 'point';
  /** Which drum of the layout, from 0. */
  readonly drum: number;
  /** Hour on a clock face as the player looks down into the drum; the player stands at 6. */
  readonly clock: number;
  /** Distance from the drum's middle, as a part of the rim's radius (0…1). */
  readonly radius: number;
}

/** Where the pan was hit: on a note, or at a point that somebody tapped on the drawing. */
export type ImpactPlace = { readonly kind: 'note'; readonly note: MidiNote } | ImpactPoint;
