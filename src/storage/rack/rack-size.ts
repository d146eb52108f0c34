// How much is kept, without reading it.
import type { RackSize } from '../../domain/ports/pan-store';
import type { PanId } from '../../domain/records/rack-records';
import { placesOfPan } from '../database/database-structure';
import type { Transaction } from '../database/transaction';
import { changesInRow, readingsInRow } from './card-rows';

export const storesOfSize = ['cards', 'readings', 'attachments'] as const;

/** Number of readings and bytes of sounds; what the rows of the cards do not know is counted. */
export async function sizeOfRack(transaction: Transaction<'readonly'>): Promise<RackSize> {
  const [rows, soundBytes] = await Promise.all([
    transaction.objectStore('cards').getAll(),
    soundBytesOf(transaction),
  ]);
  const counts = await Promise.all(
    rows.map(
      (row) => readingsInRow(row) ?? countReadings(transaction, (row as { pan: PanId }).pan),
    ),
  );
  return {
    readings: sumOf(counts),
    soundBytes,
    changes: sumOf(rows.map(changesInRow)),
  };
}

const sumOf = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);

export const countReadings = (
  transaction: Transaction<'readonly' | 'readwrite'>,
  pan: PanId,
): Promise<number> => transaction.objectStore('readings').index('place').count(placesOfPan(pan));

/** Nearly all sounds have the same length, so there are few lengths to ask about. */
async function soundBytesOf(transaction: Transaction<'readonly'>): Promise<number> {
  const lengths = transaction.objectStore('attachments').index('soundBytes');
  let sum = 0;
  let cursor = await lengths.openKeyCursor(null, 'nextunique');
  for (; cursor; cursor = await cursor.continue()) {
    sum += cursor.key * (await lengths.count(cursor.key));
  }
  return sum;
}
