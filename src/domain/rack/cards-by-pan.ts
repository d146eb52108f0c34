// All cards of the rack, each found by its pan.

import type { PanId } from '../records/rack-records';
import type { PanCard } from './pan-card';

export type Cards = ReadonlyMap<PanId, PanCard>;

export const cardsByPan = (cards: readonly PanCard[]): Cards =>
  new Map(cards.map((card) => [card.pan, card]));

/** True if both hold the same, in whatever order. */
export const areSameCards = (one: Cards, other: Cards): boolean =>
  one.size === other.size &&
  [...one].every(([pan, card]) => JSON.stringify(card) === JSON.stringify(other.get(pan)));
