// Where a part of a backup lies in the database, and what is there under its name.
import type { BackupPart } from '../../domain/records/backup/backup-format';
import { attachmentClash, type Clash, recordClash } from '../../domain/records/merging/clash';
import type { Attachment } from '../../domain/records/rack-records';
import { type RecordStore, storeOf } from '../database/database-structure';
import type { Transaction } from '../database/transaction';
import { idOf } from './beside-rows';

export type PartStore = RecordStore | 'attachments';

export const storeOfPart = (part: BackupPart): PartStore =>
  part.kind === 'record' ? storeOf[part.record.kind] : 'attachments';

/** What is stored of a part. */
export const rowOf = (part: BackupPart): unknown =>
  part.kind === 'record' ? part.record : attachmentRow(part.attachment);

/** Beside an attachment stands what is searched for without reading its bytes. */
const attachmentRow = (attachment: Attachment) => ({
  id: attachment.id,
  pan: attachment.pan,
  ...(attachment.kind === 'sound' ? { soundBytes: attachment.bytes.byteLength } : {}),
  attachment,
});

/** `there`: what the part's store holds under its name. */
export const clashOf = (part: BackupPart, there: unknown): Clash =>
  part.kind === 'record'
    ? recordClash(part.record, there)
    : attachmentClash(part.attachment, (there as { readonly attachment?: unknown }).attachment);

/** Fewer than this are asked for one by one (chosen, no source). */
const many = 50;

/** The parts by their store. */
export function byStore(parts: readonly BackupPart[]): ReadonlyMap<PartStore, BackupPart[]> {
  const groups = new Map<PartStore, BackupPart[]>();
  for (const part of parts) {
    const name = storeOfPart(part);
    const group = groups.get(name) ?? [];
    groups.set(name, group);
    group.push(part);
  }
  return groups;
}

/** The names of those of `parts`, all of one store, that are there. */
export async function idsThere(
  transaction: Transaction<'readonly' | 'readwrite'>,
  name: PartStore,
  parts: readonly BackupPart[],
): Promise<ReadonlySet<unknown>> {
  const store = transaction.objectStore(name);
  if (parts.length >= many) {
    // A backup holds them in the order of their ids: one question answers for all that lie close together.
    const ids = parts.map(idOf).sort();
    const range = IDBKeyRange.bound(ids[0], ids.at(-1));
    const most = 2 * ids.length;
    const keys = await store.getAllKeys(range, most);
    if (keys.length < most) return new Set(keys);
  }
  const keys = await Promise.all(parts.map((part) => store.getKey(idOf(part))));
  return new Set(keys.filter((key) => key !== undefined));
}
