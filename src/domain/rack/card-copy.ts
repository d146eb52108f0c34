// The cards of the rack as one text, for a copy of them outside the database.
import type { PanCard } from './pan-card';
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
