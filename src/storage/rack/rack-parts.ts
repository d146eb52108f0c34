// Everything that is kept, of the whole rack or of one pan, in batches, so that a rack of any size needs little memory.
import type { BackupPart } from '../../domain/records/backup/backup-format';
import type { PanId, RackRecord } from '../../domain/records/rack-records';
import type { Database } from '../database/database';
import { placesOfPan, type RecordStore, storeOf } from '../database/database-structure';
import { restoreBesideRow } from './beside-rows';
import { restoreAttachmentRow, restoreKept } from './restore-kept';

/** Most records in a batch, and most attachments (chosen, no source). */
const recordsAtOnce = 500;
/** An attachment may have megabytes. */
const attachmentsAtOnce = 4;

export interface PartsBatch {
  readonly parts: readonly BackupPart[];
  /** Stored entries that this batch was made of; those that could not be read are not among the parts. */
  readonly count: number;
}

const kinds = Object.keys(storeOf) as RackRecord['kind'][];

/** How many entries there are on the whole rack. */
export const countEntries = (database: Database): Promise<number> =>
  database.use(async (connection) => {
    const stores = [...Object.values(storeOf), 'attachments', 'beside'] as const;
    const counts = await Promise.all(stores.map((store) => connection.count(store)));
    return counts.reduce((sum, count) => sum + count, 0);
  });

/** All of the rack, kind by kind. What is written meanwhile may be in it or not. */
export async function* partsOfRack(database: Database): AsyncGenerator<PartsBatch> {
  for (const kind of kinds) {
    for await (const values of batches(database, storeOf[kind], recordsAtOnce)) {
      yield recordParts(kind, values);
    }
  }
  for await (const rows of batches(database, 'attachments', attachmentsAtOnce)) {
    yield attachmentParts(rows);
  }
  for await (const rows of batches(database, 'beside', attachmentsAtOnce)) yield besideParts(rows);
}

/** All of one pan, its readings note by note. */
export async function* partsOfPan(database: Database, pan: PanId): AsyncGenerator<PartsBatch> {
  for (const kind of kinds) {
    const store = storeOf[kind];
    if (store === 'readings') continue;
    yield recordParts(kind, await database.use((use) => use.getAllFromIndex(store, 'pan', pan)));
  }
  for (const place of await placesOf(database, pan)) {
    const readings = await database.use((use) => use.getAllFromIndex('readings', 'place', place));
    yield recordParts('reading', readings);
  }
  const keys = await database.use((use) => use.getAllKeysFromIndex('attachments', 'pan', pan));
  for (const key of keys) {
    yield attachmentParts([await database.use((use) => use.get('attachments', key))]);
  }
  yield besideParts(await database.use((use) => use.getAllFromIndex('beside', 'pan', pan)));
}

/**
 * All values of a store in the order of their keys, each batch in a transaction of its own. The next one is read
 * while the one before is written.
 */
async function* batches(
  database: Database,
  store: RecordStore | 'attachments' | 'beside',
  most: number,
): AsyncGenerator<readonly unknown[]> {
  const read = (range: IDBKeyRange | null): Promise<readonly unknown[]> => {
    const reading = database.use((use) => use.getAll(store, range, most));
    reading.catch(() => undefined);
    return reading;
  };
  let reading = read(null);
  for (;;) {
    const values = await reading;
    const isLast = values.length < most;
    if (!isLast) {
      const last = values.at(-1) as Readonly<Record<'id' | 'key', IDBValidKey>>;
      reading = read(IDBKeyRange.lowerBound(store === 'beside' ? last.key : last.id, true));
    }
    if (values.length > 0) yield values;
    if (isLast) return;
  }
}

/** The keys [pan, note] under which the pan has readings. */
const placesOf = (database: Database, pan: PanId): Promise<readonly [string, number][]> =>
  database.use(async (connection) => {
    const places: [string, number][] = [];
    let cursor = await connection
      .transaction('readings')
      .store.index('place')
      .openKeyCursor(placesOfPan(pan), 'nextunique');
    for (; cursor; cursor = await cursor.continue()) places.push(cursor.key);
    return places;
  });

const recordParts = (kind: RackRecord['kind'], values: readonly unknown[]): PartsBatch => ({
  parts: restoreKept(kind, values, []).map((record) => ({ kind: 'record', record })),
  count: values.length,
});

const attachmentParts = (rows: readonly unknown[]): PartsBatch => ({
  parts: rows.flatMap((row) => {
    const attachment = restoreAttachmentRow(row, []);
    return attachment ? [{ kind: 'attachment', attachment }] : [];
  }),
  count: rows.length,
});

/** What is kept beside other entries goes out as well, after everything that is in place. */
const besideParts = (rows: readonly unknown[]): PartsBatch => ({
  parts: rows.flatMap((row) => restoreBesideRow(row)?.part ?? []),
  count: rows.length,
});
