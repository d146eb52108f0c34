// Adds records to the database; one that is already there stays, or gives way to a better one of a backup.
import type { Attachment, PanId, RackRecord } from '../domain/records/rack-records';
import { invalidateCards } from './card-rows';
import { isBetterAttachment, isBetterRecord } from './choose-better';
import { type Connection, type RecordStore, storeOf } from './database-structure';
import { inTransaction, type StoreName, type Transaction } from './transaction';

/** What is done about an entry whose name is there already: left as it is, or the better one of the two kept. */
export type OnClash = 'leave' | 'choose';

export interface Added {
  /** Pans that have something new. */
  readonly pans: readonly PanId[];
  readonly records: number;
  readonly attachments: number;
}

interface Entry {
  readonly id: string;
  readonly pan: PanId;
}

/** Writes all of it or nothing, in one transaction; resolves to what was new once it is on disk. */
export function addRecords(
  connection: Connection,
  records: readonly RackRecord[],
  attachments: readonly Attachment[],
  onClash: OnClash = 'leave',
): Promise<Added> {
  const stores = new Set<StoreName>(records.map(({ kind }) => storeOf[kind]));
  if (attachments.length > 0) stores.add('attachments');
  if (stores.size === 0) return Promise.resolve({ pans: [], records: 0, attachments: 0 });
  return inTransaction(connection, [...stores, 'cards'], 'readwrite', async (transaction) => {
    const [newRecords, newAttachments] = await Promise.all([
      Promise.all(
        onlyFirst(records).map((record) =>
          add(
            storeIn(transaction, storeOf[record.kind]),
            record,
            (there) => onClash === 'choose' && isBetterRecord(record, there),
          ),
        ),
      ),
      Promise.all(
        onlyFirst(attachments).map((each) =>
          add(
            storeIn(transaction, 'attachments'),
            attachmentRow(each),
            (there) => onClash === 'choose' && isBetterAttachment(each, there),
          ),
        ),
      ),
    ]);
    const changed = [...newRecords, ...newAttachments].flatMap((pan) => pan ?? []);
    const pans = new Set(changed.map((each) => each.pan));
    await invalidateCards(transaction, pans);
    const isAdded = (change: Change | null) => change?.isAdded === true;
    return {
      pans: [...pans],
      records: newRecords.filter(isAdded).length,
      attachments: newAttachments.filter(isAdded).length,
    };
  });
}

interface Change {
  readonly pan: PanId;
  /** Not there before; else it replaced a lesser one of the same name. */
  readonly isAdded: boolean;
}

type RecordsStore = ReturnType<typeof storeIn>;
const storeIn = (transaction: Transaction<'readwrite'>, name: RecordStore | 'attachments') =>
  transaction.objectStore(name);

/** Resolves to what changed, or null if nothing did: `entry` is there and not `isBetter`. */
async function add(
  store: RecordsStore,
  entry: Entry,
  isBetter: (there: unknown) => boolean,
): Promise<Change | null> {
  const isThere = (await store.getKey(entry.id)) !== undefined;
  if (isThere && !isBetter(await store.get(entry.id))) return null;
  await store.put(entry);
  return { pan: entry.pan, isAdded: !isThere };
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
