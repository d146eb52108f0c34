// Adds records to the database; one that is already there stays as it is.
import type { Attachment, PanId, RackRecord } from '../domain/records/rack-records';
import { invalidateCards } from './card-rows';
import { type Connection, storeOf } from './database-structure';
import { inTransaction, type StoreName } from './transaction';

/** Writes all of it or nothing, in one transaction; resolves to the pans that had something new once it is on disk. */
export function addRecords(
  connection: Connection,
  records: readonly RackRecord[],
  attachments: readonly Attachment[],
): Promise<readonly PanId[]> {
  const stores = new Set<StoreName>(records.map(({ kind }) => storeOf[kind]));
  if (attachments.length > 0) stores.add('attachments');
  if (stores.size === 0) return Promise.resolve([]);
  return inTransaction(connection, [...stores, 'cards'], 'readwrite', async (transaction) => {
    const changed = new Set<PanId>();
    const add = async (store: Exclude<StoreName, 'cards' | 'settings'>, value: Entry) => {
      const target = transaction.objectStore(store);
      if ((await target.getKey(value.id)) !== undefined) return;
      changed.add(value.pan);
      await target.put(value);
    };
    await Promise.all([
      ...onlyFirst(records).map((record) => add(storeOf[record.kind], record)),
      ...onlyFirst(attachments).map((each) => add('attachments', attachmentRow(each))),
    ]);
    await invalidateCards(transaction, changed);
    return [...changed];
  });
}

interface Entry {
  readonly id: string;
  readonly pan: PanId;
}

/** A row of the store of attachments: the attachment, and beside it what is searched for without reading its bytes. */
const attachmentRow = (attachment: Attachment) => ({
  id: attachment.id,
  pan: attachment.pan,
  ...(attachment.kind === 'sound' ? { soundBytes: attachment.bytes.byteLength } : {}),
  attachment,
});

/** Without the later ones of several with the same name: requests of one transaction are sent before any is answered. */
function onlyFirst<T extends { readonly id: string }>(entries: readonly T[]): readonly T[] {
  const seen = new Set<string>();
  return entries.filter(({ id }) => !seen.has(id) && seen.add(id));
}
