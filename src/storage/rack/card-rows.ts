// The cards of the rack as the database holds them: one row a pan, with a count that tells an old card from a new one.
import type { KeptCards } from '../../domain/ports/pan-store';
import type { PanCard } from '../../domain/rack/pan-card';
import { restorePanCard } from '../../domain/rack/restore-pan-card';
import { type PanId, panId } from '../../domain/records/rack-records';
import type { Transaction } from '../database/transaction';

export interface CardRow {
  readonly pan: PanId;
  /** How often records of the pan were written; a card computed from fewer is older than its records. */
  readonly changes: number;
  /**
   * How many readings the pan has, counted when its card was kept and thrown away with it; null when unknown.
   * Counting all readings of a large rack takes seconds.
   */
  readonly readings: number | null;
  /** Null when the pan was written to since its card was made. */
  readonly card: PanCard | null;
}

/** A valid row, or null where there is none; a card that cannot be read is as good as none. */
export function restoreCardRow(stored: unknown): CardRow | null {
  if (typeof stored !== 'object' || stored === null) return null;
  const { pan, card } = stored as Readonly<Record<string, unknown>>;
  if (typeof pan !== 'string') return null;
  const readings = readingsInRow(stored);
  // For a row without a count, as older versions wrote them, the card is made anew as well: the count comes with it.
  const isWhole = readings !== null && card !== null && card !== undefined;
  return {
    pan: panId(pan),
    changes: changesInRow(stored),
    readings,
    card: isWhole ? restorePanCard(card) : null,
  };
}

/** See `CardRow.changes`; 0 where it is not known. */
export function changesInRow(stored: unknown): number {
  const { changes } = stored as { readonly changes?: unknown };
  return typeof changes === 'number' && Number.isSafeInteger(changes) && changes >= 0 ? changes : 0;
}

/** See `CardRow.readings`; of any stored row, without a look at its card. */
export function readingsInRow(stored: unknown): number | null {
  const { readings } = stored as { readonly readings?: unknown };
  return typeof readings === 'number' && Number.isSafeInteger(readings) && readings >= 0
    ? readings
    : null;
}

/** The cards, and the pans whose card must be made anew. */
export function sortRows(rows: readonly unknown[]): KeptCards {
  const restored = rows.flatMap((row) => restoreCardRow(row) ?? []);
  return {
    cards: restored.flatMap(({ pan, card }) => (card?.pan === pan ? [card] : [])),
    stale: restored.filter(({ pan, card }) => card?.pan !== pan).map(({ pan }) => pan),
  };
}

/** Throws the cards of `pans` away, in the transaction that writes their records. */
export async function invalidateCards(
  transaction: Transaction<'readwrite'>,
  pans: Iterable<PanId>,
): Promise<void> {
  const store = transaction.objectStore('cards');
  await Promise.all(
    Array.from(pans, async (pan) => {
      const changes = (restoreCardRow(await store.get(pan))?.changes ?? 0) + 1;
      await store.put({ pan, changes, readings: null, card: null } satisfies CardRow);
    }),
  );
}
