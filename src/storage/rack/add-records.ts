// Adds records to the database. One that is already there stays; only a damaged one gives way to a whole one of a
// backup, and what says something else is kept beside it.
import type { BackupPart } from '../../domain/records/backup/backup-format';
import type { Differing } from '../../domain/records/merging/differing';
import type { Attachment, PanId, RackRecord } from '../../domain/records/rack-records';
import type { Connection } from '../database/database-structure';
import { inTransaction, type StoreName, type Transaction } from '../database/transaction';
import { type BesideRow, differingOf, idOf, panOfPart, panOfStored } from './beside-rows';
import { invalidateCards } from './card-rows';
import { byStore, clashOf, idsThere, type PartStore, rowOf, storeOfPart } from './stored-parts';

/** What happens to an entry whose name is there already: it is left out, or compared with the one there. */
export type OnClash = 'leave' | 'compare';

export interface Added {
  /** Pans that have something new. */
  readonly pans: readonly PanId[];
  readonly records: number;
  readonly attachments: number;
  /** Damaged ones that were replaced by whole ones. */
  readonly healed: number;
  /** What differs from what is kept under its name, which stays in place; without what was settled before. */
  readonly differing: readonly Differing[];
}

/** Writes all of it or nothing, in one transaction; resolves to what was new once it is on disk. */
export function addRecords(
  connection: Connection,
  records: readonly RackRecord[],
  attachments: readonly Attachment[],
): Promise<Added> {
  const parts = [
    ...records.map((record) => ({ kind: 'record', record }) as const),
    ...attachments.map((attachment) => ({ kind: 'attachment', attachment }) as const),
  ];
  return addParts(connection, parts, 'leave');
}

export function addParts(
  connection: Connection,
  parts: readonly BackupPart[],
  onClash: OnClash,
): Promise<Added> {
  const { firsts, rest } = split(parts);
  const groups = byStore(firsts);
  const nothing = { pans: [], records: 0, attachments: 0, healed: 0, differing: [] };
  if (groups.size === 0) return Promise.resolve(nothing);
  const stores: readonly StoreName[] = [
    ...groups.keys(),
    ...(onClash === 'compare' ? (['beside'] as const) : []),
    'cards',
  ];
  return inTransaction(connection, stores, 'readwrite', async (transaction) => {
    const adding = Array.from(groups, ([name, group]) => addAll(transaction, name, group, onClash));
    const changes = (await Promise.all(adding)).flat();
    if (onClash === 'compare') {
      // A file may hold several of one name: the first was added or compared, and so are the others now.
      for (const part of rest) {
        changes.push(await compare(transaction, storeOfPart(part), part));
      }
    }
    const pans = new Set(changes.flatMap((change) => change?.pans ?? []));
    await invalidateCards(transaction, pans);
    const count = (kind: BackupPart['kind'], what: Change['what']) =>
      changes.filter((change) => change?.kind === kind && change.what === what).length;
    return {
      pans: [...pans],
      records: count('record', 'added'),
      attachments: count('attachment', 'added'),
      healed: count('record', 'healed') + count('attachment', 'healed'),
      differing: changes.flatMap((change) => change?.differing ?? []),
    };
  });
}

interface Change {
  readonly kind: BackupPart['kind'];
  readonly what: 'added' | 'healed' | 'kept-beside';
  /** Those whose cards are out of date. */
  readonly pans: readonly PanId[];
  readonly differing: Differing | null;
}

/** What changed, or null for each of `parts` (of one store, no name twice) that changes nothing. */
async function addAll(
  transaction: Transaction<'readwrite'>,
  name: PartStore,
  parts: readonly BackupPart[],
  onClash: OnClash,
): Promise<readonly (Change | null)[]> {
  const there = await idsThere(transaction, name, parts);
  const store = transaction.objectStore(name);
  return Promise.all(
    parts.map(async (part): Promise<Change | null> => {
      if (there.has(idOf(part))) {
        return onClash === 'leave' ? null : compare(transaction, name, part);
      }
      await store.put(rowOf(part));
      return { kind: part.kind, what: 'added', pans: [panOfPart(part)], differing: null };
    }),
  );
}

/** What becomes of a part whose name is there. */
async function compare(
  transaction: Transaction<'readwrite'>,
  name: PartStore,
  part: BackupPart,
): Promise<Change | null> {
  const store = transaction.objectStore(name);
  const kept: unknown = await store.get(idOf(part));
  switch (clashOf(part, kept)) {
    case 'same':
    case 'unreadable':
      return null;
    case 'heals': {
      await store.put(rowOf(part));
      // The damage may lie in the very fields that say where it belongs.
      const pans = [panOfPart(part), panOfStored(kept) ?? panOfPart(part)];
      return { kind: part.kind, what: 'healed', pans, differing: null };
    }
    case 'differs': {
      const beside = transaction.objectStore('beside');
      const differing = differingOf(part, kept);
      const row = (await beside.get(differing.key)) as Partial<BesideRow> | undefined;
      if (row?.isSettled === true) return null;
      const { key, id, pan } = differing;
      if (!row) await beside.put({ key, id, pan, part, isSettled: false } satisfies BesideRow);
      return { kind: part.kind, what: 'kept-beside', pans: [], differing };
    }
  }
}

/** The first of each name, and the later ones: requests of one transaction are sent before any is answered. */
function split(parts: readonly BackupPart[]) {
  const seen = new Set<string>();
  const rest: BackupPart[] = [];
  const firsts = parts.filter((part) => {
    const name = `${storeOfPart(part)} ${idOf(part)}`;
    if (!seen.has(name)) return seen.add(name);
    rest.push(part);
    return false;
  });
  return { firsts, rest };
}
