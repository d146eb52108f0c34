import type { PanCard } from '../rack/pan-card';

/**
 * A second copy of the rack's cards, quicker to read than the rack itself, which alone is believed. Never throws:
 * where nothing can be kept, there are none.
 */
export interface CardCopy {
  read(): readonly PanCard[];
  write(cards: readonly PanCard[]): void;
}
