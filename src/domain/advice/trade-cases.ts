// What field tuners do about which fault: the rules that stand before all arithmetic.

import type { ThreePartials } from '../numbers/three-partials';
import type { BlowPlace, BlowSide, BlowWhere } from '../records/blow-places';

/** What a partial must do, against a fixed target: octave and third have to end in tune with the mended fundamental. */
export type Must = 'up' | 'down' | 'stay';

export type FaultName =
  | 'all-flat'
  | 'all-sharp'
  | 'fundamental-and-octave-flat'
  | 'fundamental-and-third-flat'
  | 'fundamental-flat'
  | 'fundamental-sharp'
  | 'octave-flat'
  | 'octave-sharp'
  | 'third-flat'
  | 'third-sharp';

export interface TradeCase {
  readonly fault: FaultName;
  readonly must: ThreePartials<Must>;
  /** Where it is worked, the usual place first. No other place is suggested for it. */
  readonly places: readonly BlowWhere[];
  /** Nobody knows beforehand which way these blows move the partial: that is found by a few light ones. */
  readonly isFoundByTrying: boolean;
  readonly source: 'Kronman 1992, ch. 24' | 'common practice, no source';
}

const at = (place: BlowPlace, side: BlowSide): BlowWhere => ({ place, side });
const practice = { source: 'common practice, no source', isFoundByTrying: false } as const;
const foundByTrying = { ...practice, isFoundByTrying: true } as const;
const longAxis = [at('glancing-long', 'above'), at('glancing-long', 'below')];
const shortAxis = [at('glancing-short', 'above'), at('glancing-short', 'below')];

/**
 * Of several that fit, the one that mends most comes first. Border from above: U. Kronman, "Steel Pan Tuning",
 * Musikmuseet, Stockholm, 1992, ch. 24; all others are common practice without a published source.
 */
export const tradeCases: readonly TradeCase[] = [
  {
    fault: 'all-flat',
    must: ['up', 'up', 'up'],
    places: [at('border', 'above')],
    isFoundByTrying: false,
    source: 'Kronman 1992, ch. 24',
  },
  {
    fault: 'all-sharp',
    must: ['down', 'down', 'down'],
    places: [at('border', 'below'), at('middle', 'above')],
    ...practice,
  },
  {
    fault: 'fundamental-and-octave-flat',
    must: ['up', 'up', 'stay'],
    places: [at('long-ends', 'above')],
    ...practice,
  },
  {
    fault: 'fundamental-and-third-flat',
    must: ['up', 'stay', 'up'],
    places: [at('short-ends', 'above')],
    ...practice,
  },
  {
    fault: 'fundamental-flat',
    must: ['up', 'stay', 'stay'],
    places: [at('corners', 'above'), at('middle', 'below')],
    ...practice,
  },
  {
    fault: 'fundamental-sharp',
    must: ['down', 'stay', 'stay'],
    places: [at('middle', 'above')],
    ...practice,
  },
  { fault: 'octave-flat', must: ['stay', 'up', 'stay'], places: longAxis, ...foundByTrying },
  { fault: 'octave-sharp', must: ['stay', 'down', 'stay'], places: longAxis, ...foundByTrying },
  { fault: 'third-flat', must: ['stay', 'stay', 'up'], places: shortAxis, ...foundByTrying },
  { fault: 'third-sharp', must: ['stay', 'stay', 'down'], places: shortAxis, ...foundByTrying },
];
