import type { PanCard } from '../rack/pan-card';

/**
 * A second copy of the rack's cards, quicker to read than the rack itself, which has the last word. Never throws:
 * where nothing can be kept, there are no cards.
 */
export interface CardCopy {
  read(): readonly PanCard[];
  write(cards: readonly PanCard[]): void;
}
