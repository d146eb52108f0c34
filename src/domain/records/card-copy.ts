// The cards of the rack as one text, for a copy of them outside the database.
import type { PanCard } from './pan-card';
import type { PanId } from './rack-records';
import { restorePanCard } from './restore-pan-card';

export const cardCopyText = (cards: readonly PanCard[]): string => JSON.stringify(cards);

/** The cards that `cardCopyText` wrote, without those that cannot be read; none of anything else. Never throws. */
export function restoreCardCopy(text: string | null): readonly PanCard[] {
  let value: unknown;
  try {
    value = JSON.parse(text ?? '[]');
  } catch {
    return [];
  }
  return Array.isArray(value) ? value.flatMap((card) => restorePanCard(card) ?? []) : [];
}

export type Cards = ReadonlyMap<PanId, PanCard>;

export const cardsByPan = (cards: readonly PanCard[]): Cards =>
  new Map(cards.map((card) => [card.pan, card]));

/** True if both hold the same, in whatever order. */
export const areSameCards = (one: Cards, other: Cards): boolean =>
  one.size === other.size &&
  [...one].every(([pan, card]) => JSON.stringify(card) === JSON.stringify(other.get(pan)));
