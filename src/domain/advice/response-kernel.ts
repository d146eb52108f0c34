// How much the responses of two notes to blows at two places are expected to have in common.

import type { PartialIndex } from '../numbers/three-partials';
import type { BlowWhere } from '../records/blow-places';
import { priorOf } from './blow-priors';
import type { NoteTraits } from './blow-sets';

export interface BlowSpot extends BlowWhere {
  readonly note: number;
  readonly traits: NoteTraits;
}

/** Standard deviations of factors on the expected response (own guesses; tested against simulated pans). */
const factors = {
  /** What the whole pan shares: soft or hard metal, this hammer, this arm. */
  pan: 0.35,
  /** Of one place and side on this pan. */
  place: 0.65,
  /** Of one place and side on one note. */
  note: 0.3,
};
/** Shares of what a partial does by itself: the same on the whole pan, its ring, by size, and on one note only. */
const shares = { pan: 0.55, ring: 0.1, size: 0.05, note: 0.3 };

/**
 * Prior covariance between the response of partial `i` at one spot and partial `j` at another, cents² per usual
 * set squared. A hierarchy of independent normal effects: pan, place, ring, size and note (partial pooling; Gelman
 * & Hill, Data Analysis Using Regression and Multilevel/Hierarchical Models, 2007, ch. 12).
 */
export function responseCovariance(
  one: BlowSpot,
  i: PartialIndex,
  other: BlowSpot,
  j: PartialIndex,
): number {
  const prior = priorOf(one);
  const means = prior.mean[i] * priorOf(other).mean[j];
  let sum = factors.pan ** 2 * means;
  if (one.place !== other.place || one.side !== other.side) return sum;
  const isSameNote = one.note === other.note;
  sum += (factors.place ** 2 + (isSameNote ? factors.note ** 2 : 0)) * means;
  if (i !== j) return sum;
  const isSameRing = one.traits.ring !== null && one.traits.ring === other.traits.ring;
  const inCommon =
    shares.pan +
    (isSameRing || isSameNote ? shares.ring : 0) +
    shares.size * one.traits.size * other.traits.size +
    (isSameNote ? shares.note : 0);
  return sum + inCommon * prior.own[i] ** 2;
}
