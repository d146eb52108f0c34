// Adds records to the database; one that is already there stays, or gives way to a better one of a backup.
import type { Attachment, PanId, RackRecord } from '../../domain/records/rack-records';
import { type Connection, type RecordStore, storeOf } from '../database/database-structure';
import { inTransaction, type StoreName, type Transaction } from '../database/transaction';
import { invalidateCards } from './card-rows';
import { isBetterAttachment, isBetterRecord } from './choose-better';

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
      addAll(
        onlyFirst(records),
        ({ kind }) => storeIn(transaction, storeOf[kind]),
        (record) => record,
        (record, there) => onClash === 'choose' && isBetterRecord(record, there),
      ),
      addAll(
        onlyFirst(attachments),
        () => storeIn(transaction, 'attachments'),
        attachmentRow,
        (each, there) => onClash === 'choose' && isBetterAttachment(each, there),
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

/** What changed, or null for each of `entries` that is there and no better; `rowOf` makes what is stored of it. */
async function addAll<T extends Entry>(
  entries: readonly T[],
  storeFor: (entry: T) => RecordsStore,
  rowOf: (entry: T) => unknown,
  isBetter: (entry: T, there: unknown) => boolean,
): Promise<readonly (Change | null)[]> {
  const byStore = new Map<string, { readonly store: RecordsStore; readonly entries: T[] }>();
  for (const entry of entries) {
    const store = storeFor(entry);
    const group = byStore.get(store.name) ?? { store, entries: [] };
    byStore.set(store.name, group);
    group.entries.push(entry);
  }
  const changes = await Promise.all(
    Array.from(byStore.values(), async (group) => {
      const there = await idsThere(group.store, group.entries);
      return Promise.all(
        group.entries.map(async (entry) => {
          const isThere = there.has(entry.id);
          if (isThere && !isBetter(entry, await group.store.get(entry.id))) return null;
          await group.store.put(rowOf(entry));
          return { pan: entry.pan, isAdded: !isThere };
        }),
      );
    }),
  );
  return changes.flat();
}

/** Fewer are asked for one by one. */
const many = 50;

/** Which of `entries` are in `store`. */
async function idsThere(
  store: RecordsStore,
  entries: readonly Entry[],
): Promise<ReadonlySet<unknown>> {
  if (entries.length >= many) {
    // A backup holds them in the order of their ids: one question answers for all that lie close together.
    const ids = entries.map(({ id }) => id).sort();
    const range = IDBKeyRange.bound(ids[0], ids.at(-1));
    const most = 2 * ids.length;
    const keys = await store.getAllKeys(range, most);
    if (keys.length < most) return new Set(keys);
  }
  const keys = await Promise.all(entries.map(({ id }) => store.getKey(id)));
  return new Set(keys.filter((key) => key !== undefined));
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
