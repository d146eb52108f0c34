// In which order the rack shows its pans, and which of them a search finds.

import { compareText } from '../records/record-order';
import type { Instant } from '../tuning/units';
import type { PanCard } from './pan-card';
import { needNow } from './tuner-need';

/** `need`: most in need first. `name`: from A to Z, "Lead 2" before "Lead 10". `last-round`: longest unread first. */
export const rackOrders = ['need', 'name', 'last-round'] as const;
export type RackOrder = (typeof rackOrders)[number];

/** The cards in order; what the order leaves equal is sorted by name, then by identity. */
export function inRackOrder(
  cards: readonly PanCard[],
  order: RackOrder,
  now: Instant,
): readonly PanCard[] {
  const names = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
  const keyed = cards.map((card) => ({ card, key: keyOf(card, order, now) }));
  return keyed
    .sort(
      (one, other) =>
        one.key - other.key ||
        names.compare(one.card.name, other.card.name) ||
        compareText(one.card.pan, other.card.pan),
    )
    .map(({ card }) => card);
}

/** Smaller comes first. */
function keyOf(card: PanCard, order: RackOrder, now: Instant): number {
  switch (order) {
    case 'need':
      return -needNow(card, now).need;
    case 'name':
      return 0;
    case 'last-round':
      return card.lastRoundAt ?? Number.MIN_SAFE_INTEGER;
  }
}

/**
 * The cards in which every word of `text` is found: in the pan's name, owner, maker, serial number or layout,
 * whatever its accents and capitals. No word finds all.
 */
export function searchRack(cards: readonly PanCard[], text: string): readonly PanCard[] {
  const words = plain(text).split(/\s+/).filter(Boolean);
  return cards.filter(({ name, owner, maker, serial, layoutName }) => {
    const all = plain([name, owner, maker, serial, layoutName].join('\n'));
    return words.every((word) => all.includes(word));
  });
}

/** Without accents (marks that decompose from their letter, Unicode Standard Annex 15) and capitals. */
const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
