// The rack in IndexedDB.
import type {
  Kept,
  KeptCards,
  Loaded,
  PanStore,
  RackChange,
  RackSize,
} from '../../domain/ports/pan-store';
import type { Unsubscribe } from '../../domain/ports/unsubscribe';
import type { PanCard } from '../../domain/rack/pan-card';
import type {
  Attachment,
  AttachmentId,
  PanId,
  PanRecords,
  RackRecord,
  ReadingRecord,
  RoundId,
} from '../../domain/records/rack-records';
import { type InTurn, isBefore, olderFirst } from '../../domain/records/record-order';
import type { MidiNote } from '../../domain/tuning/units';
import type { Database } from '../database/database';
import { OpeningFailed, storeTrouble } from '../database/store-trouble';
import { inTransaction, type StoreName, type Transaction } from '../database/transaction';
import { addRecords } from './add-records';
import { type CardRow, restoreCardRow, sortRows } from './card-rows';
import { RackChanges } from './rack-changes';
import { countReadings, sizeOfRack, storesOfSize } from './rack-size';
import { storedOutside } from './readings-outside';
import { restoreAttachmentRow, restoreKept } from './restore-kept';

/** Everything of a pan but its readings. */
const storesOfPan = [
  'pan-edits',
  'rounds',
  'round-ends',
  'marks',
  'blows',
  'knock-checks',
  'stopgaps',
  'tuner-visits',
  'erasures',
] as const;

export class IndexedDbPanStore implements PanStore {
  readonly #database: Database;
  readonly #changes: RackChanges;
  /** How often a pan had been written to when its records were read. */
  readonly #changesAtReading = new WeakMap<PanRecords, number>();

  constructor(database: Database, changes = new RackChanges()) {
    this.#database = database;
    this.#changes = changes;
  }

  cards(): Promise<Loaded<KeptCards>> {
    return this.#load(['cards'], async (transaction) =>
      sortRows(await transaction.objectStore('cards').getAll()),
    );
  }

  async keepCard(card: PanCard, madeFrom: PanRecords): Promise<Kept> {
    const changes = this.#changesAtReading.get(madeFrom);
    return this.#write(async (connection) => {
      const stores = ['cards', 'readings'] as const;
      await inTransaction(connection, stores, 'readwrite', async (transaction) => {
        const store = transaction.objectStore('cards');
        const row = restoreCardRow(await store.get(card.pan));
        // Written to since: the card is already an old one.
        if (row === null || row.changes !== changes) return;
        const readings = await countReadings(transaction, card.pan);
        await store.put({ ...row, readings, card } satisfies CardRow);
      });
    });
  }

  pan(pan: PanId): Promise<Loaded<PanRecords>> {
    return this.#load([...storesOfPan, 'cards'], async (transaction, repairs) => {
      const all = (store: (typeof storesOfPan)[number]) =>
        transaction.objectStore(store).index('pan').getAll(pan);
      const [edits, rounds, ends, marks, blows, knocks, stopgaps, visits, erasures, row] =
        await Promise.all([
          all('pan-edits'),
          all('rounds'),
          all('round-ends'),
          all('marks'),
          all('blows'),
          all('knock-checks'),
          all('stopgaps'),
          all('tuner-visits'),
          all('erasures'),
          transaction.objectStore('cards').get(pan),
        ]);
      const records: PanRecords = {
        pan,
        edits: restoreKept('pan-edit', edits, repairs),
        rounds: restoreKept('round', rounds, repairs),
        ends: restoreKept('round-end', ends, repairs),
        marks: restoreKept('mark', marks, repairs),
        blows: restoreKept('blows', blows, repairs),
        knockChecks: restoreKept('knock-check', knocks, repairs),
        stopgaps: restoreKept('stopgap', stopgaps, repairs),
        visits: restoreKept('tuner-visit', visits, repairs),
        erasures: restoreKept('erasure', erasures, repairs),
      };
      const changes = restoreCardRow(row)?.changes;
      if (changes !== undefined) this.#changesAtReading.set(records, changes);
      return records;
    });
  }

  readingsOfRound(round: RoundId): Promise<Loaded<readonly ReadingRecord[]>> {
    return this.#load(['readings'], async (transaction, repairs) => {
      const stored = await transaction.objectStore('readings').index('round').getAll(round);
      return oldestFirst(restoreKept('reading', stored, repairs));
    });
  }

  readingsOfNote(pan: PanId, note: MidiNote): Promise<Loaded<readonly ReadingRecord[]>> {
    return this.#load(['readings'], async (transaction, repairs) => {
      const stored = await transaction.objectStore('readings').index('place').getAll([pan, note]);
      return oldestFirst(restoreKept('reading', stored, repairs));
    });
  }

  readingsOutside(pan: PanId, since: InTurn | null): Promise<Loaded<readonly ReadingRecord[]>> {
    return this.#load(['readings', 'rounds'], async (transaction, repairs) => {
      const stored = await storedOutside(transaction, pan);
      const outside = restoreKept('reading', stored, repairs);
      return oldestFirst(outside.filter((each) => since === null || !isBefore(each, since)));
    });
  }

  async keep(
    records: readonly RackRecord[],
    attachments: readonly Attachment[] = [],
  ): Promise<Kept> {
    let changed: readonly PanId[] = [];
    const kept = await this.#write(async (connection) => {
      // Told before anything is written: a round would go on as if what it had kept were still there.
      if (this.#database.takeDeleted()) throw new OpeningFailed('deleted');
      changed = (await addRecords(connection, records, attachments)).pans;
    });
    if (kept.kind === 'kept' && changed.length > 0) {
      this.#changes.announce({ pans: changed, own: records });
    }
    return kept;
  }

  attachment(id: AttachmentId): Promise<Loaded<Attachment | null>> {
    return this.#load(['attachments'], async (transaction, repairs) =>
      restoreAttachmentRow(await transaction.objectStore('attachments').get(id), repairs),
    );
  }

  size(): Promise<Loaded<RackSize>> {
    return this.#load(storesOfSize, sizeOfRack);
  }

  onChange(listener: (change: RackChange) => void): Unsubscribe {
    return this.#changes.onChange(listener);
  }

  async #load<T>(
    stores: readonly StoreName[],
    read: (transaction: Transaction<'readonly'>, repairs: string[]) => Promise<T>,
  ): Promise<Loaded<T>> {
    try {
      return await this.#database.use(async (connection) => {
        const repairs: string[] = [];
        const value = await inTransaction(connection, stores, 'readonly', (transaction) =>
          read(transaction, repairs),
        );
        return { kind: 'loaded', value, repairs };
      });
    } catch (error) {
      return { kind: 'trouble', trouble: storeTrouble(error) };
    }
  }

  async #write(work: Parameters<Database['write']>[0]): Promise<Kept> {
    try {
      await this.#database.write(work);
      return { kind: 'kept' };
    } catch (error) {
      return { kind: 'trouble', trouble: storeTrouble(error) };
    }
  }
}

const oldestFirst = (readings: readonly ReadingRecord[]): readonly ReadingRecord[] =>
  [...readings].sort(olderFirst);
