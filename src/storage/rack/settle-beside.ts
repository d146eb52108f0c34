// Of two entries of one name: which one is in place. The other stays beside it, and is not asked about again.

import type { BackupPart } from '../../domain/records/backup/backup-format';
import { besideKey } from '../../domain/records/merging/differing';
import type { PanId } from '../../domain/records/rack-records';
import type { Connection } from '../database/database-structure';
import { inTransaction, type StoreName } from '../database/transaction';
import { type BesideRow, panOfPart, panOfStored, restoreBesideRow } from './beside-rows';
import { invalidateCards } from './card-rows';
import { restoreAttachmentRow, restoreKept } from './restore-kept';
import { rowOf, storeOfPart } from './stored-parts';

export type Whose = 'yours' | 'theirs';

/**
 * In one transaction; resolves to the pans that changed once it is on disk. An entry that is not there any more changes
 * nothing.
 */
export async function settleBeside(
  connection: Connection,
  key: string,
  whose: Whose,
): Promise<readonly PanId[]> {
  const row = restoreBesideRow(await connection.get('beside', key));
  if (!row) return [];
  const name = storeOfPart(row.part);
  const stores: readonly StoreName[] = ['beside', name, 'cards'];
  return inTransaction(connection, stores, 'readwrite', async (transaction) => {
    const beside = transaction.objectStore('beside');
    if (whose === 'yours') {
      await beside.put({ ...row, isSettled: true } satisfies BesideRow);
      return [];
    }
    const store = transaction.objectStore(name);
    const kept: unknown = await store.get(row.id);
    await store.put(rowOf(row.part));
    await beside.delete(key);
    const former = partOf(row.part.kind, kept);
    if (former) {
      const formerRow = { ...row, key: besideKey(former), part: former, isSettled: true };
      await beside.put(formerRow satisfies BesideRow);
    }
    const pans = new Set([panOfPart(row.part), panOfStored(kept) ?? panOfPart(row.part)]);
    await invalidateCards(transaction, pans);
    return [...pans];
  });
}

function partOf(kind: BackupPart['kind'], kept: unknown): BackupPart | null {
  if (kind === 'attachment') {
    const attachment = restoreAttachmentRow(kept, []);
    return attachment && { kind, attachment };
  }
  const recordKind = (kept as { readonly kind?: never } | undefined)?.kind;
  const [record] = recordKind === undefined ? [] : restoreKept(recordKind, [kept], []);
  return record ? { kind, record } : null;
}
