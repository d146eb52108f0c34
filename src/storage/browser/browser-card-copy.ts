// The copy of the rack's cards in the browser's smaller store, which is read in a moment, while the database of a
// large rack takes longer to open than everything else at the start of the app.
import type { CardCopy } from '../../domain/ports/card-copy';
import { cardCopyText, restoreCardCopy } from '../../domain/rack/card-copy';
import type { PanCard } from '../../domain/rack/pan-card';

const key = 'ringwright-cards';

export class BrowserCardCopy implements CardCopy {
  #text: string | null = null;

  read(): readonly PanCard[] {
    try {
      this.#text = localStorage.getItem(key);
      return restoreCardCopy(this.#text);
    } catch {
      // Storage is refused.
      return [];
    }
  }

  write(cards: readonly PanCard[]): void {
    const text = cardCopyText(cards);
    if (text === this.#text) return;
    this.#text = text;
    try {
      localStorage.setItem(key, text);
    } catch {
      this.#remove();
    }
  }

  /** Full or refused: better no copy than an old one. */
  #remove(): void {
    try {
      localStorage.removeItem(key);
    } catch {
      // There is none.
    }
  }
}
