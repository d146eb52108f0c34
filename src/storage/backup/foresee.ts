// Compares a file with what is kept, batch by batch, without touching it.
import type { BackupPart } from '../../domain/records/backup/backup-format';
import type { Differing } from '../../domain/records/merging/differing';
import { type FileEffects, mostListed } from '../../domain/records/merging/file-effects';
import type { Erasure, PanId, RackRecord } from '../../domain/records/rack-records';
import { erasedIds } from '../../domain/records/standing/without-erased';
import type { Database } from '../database/database';
import { storeOf } from '../database/database-structure';
import { inTransaction, type StoreName } from '../database/transaction';
import { differingOf, idOf } from '../rack/beside-rows';
import { restoreKept } from '../rack/restore-kept';
import { byStore, clashOf, idsThere } from '../rack/stored-parts';

export class Foresight {
  readonly #database: Database;
  readonly #differing: Differing[] = [];
  #differingCount = 0;
  readonly #newErasures: Erasure[] = [];
  readonly #newlyHidden = new Set<PanId>();
  readonly #newlyEdited = new Set<PanId>();
  /** The entries of the file that are here and erased, and whether the file erases them as well. */
  readonly #takenOut = new Set<string>();
  readonly #fileErasures: Erasure[] = [];
  #kept: { readonly erasures: readonly Erasure[]; readonly ids: ReadonlySet<string> } | null = null;

  constructor(database: Database) {
    this.#database = database;
  }

  /** Rejects with the errors of the database. */
  async look(parts: readonly BackupPart[]): Promise<void> {
    if (parts.length === 0) return;
    this.#kept ??= await this.#readErasures();
    const { ids } = this.#kept;
    const groups = byStore(parts);
    const stores: StoreName[] = [...groups.keys()];
    await this.#database.use((connection) =>
      inTransaction(connection, stores, 'readonly', async (transaction) => {
        for (const [name, group] of groups) {
          const there = await idsThere(transaction, name, group);
          const store = transaction.objectStore(name);
          await Promise.all(
            group.map(async (part) => {
              const id = idOf(part);
              if (!there.has(id)) return this.#takeNew(part);
              if (ids.has(id)) this.#takenOut.add(id);
              this.#compare(part, await store.get(id));
            }),
          );
        }
      }),
    );
    for (const part of parts) {
      if (part.kind === 'record' && part.record.kind === 'erasure') {
        this.#fileErasures.push(part.record);
      }
    }
  }

  #takeNew(part: BackupPart): void {
    if (part.kind !== 'record') return;
    const { record } = part;
    if (record.kind === 'erasure') this.#newErasures.push(record);
    if (record.kind !== 'pan-edit') return;
    if (record.fields.isRemoved === true) this.#newlyHidden.add(record.pan);
    else this.#newlyEdited.add(record.pan);
  }

  #compare(part: BackupPart, kept: unknown): void {
    if (clashOf(part, kept) !== 'differs') return;
    this.#differingCount++;
    if (this.#differing.length < mostListed) this.#differing.push(differingOf(part, kept));
  }

  async effects(): Promise<FileEffects> {
    const before = this.#kept ?? { erasures: [], ids: new Set<string>() };
    const after = erasedIds([...before.erasures, ...this.#newErasures]);
    const news = [...after].filter((id) => !before.ids.has(id));
    const byFile = erasedIds(this.#fileErasures);
    return {
      differing: this.#differing,
      differingCount: this.#differingCount,
      erased: await this.#kindsHere(news),
      hidden: await this.#here([...this.#newlyHidden]),
      edited: await this.#here([...this.#newlyEdited]),
      takenOut: [...this.#takenOut].filter((id) => after.has(id) && !byFile.has(id)).length,
    };
  }

  #readErasures() {
    return this.#database.use(async (connection) => {
      const erasures = restoreKept('erasure', await connection.getAll('erasures'), []);
      return { erasures, ids: erasedIds(erasures) };
    });
  }

  /** How many of `ids` are here, kind by kind. */
  #kindsHere(ids: readonly string[]): Promise<FileEffects['erased']> {
    if (ids.length === 0) return Promise.resolve([]);
    const kinds = Object.keys(storeOf) as RackRecord['kind'][];
    return this.#database.use(async (connection) => {
      const counts = await Promise.all(
        kinds.map(async (kind) => {
          const keys = await Promise.all(ids.map((id) => connection.getKey(storeOf[kind], id)));
          return { kind, count: keys.filter((key) => key !== undefined).length };
        }),
      );
      return counts.filter(({ count }) => count > 0);
    });
  }

  #here(pans: readonly PanId[]): Promise<readonly PanId[]> {
    return this.#database.use(async (connection) => {
      const keys = await Promise.all(pans.map((pan) => connection.getKey('cards', pan)));
      return pans.filter((_, k) => keys[k] !== undefined);
    });
  }
}
