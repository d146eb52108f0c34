// Takes changed backups in, each on a phone with the same rack, and counts what changed there without a word.
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { type PanRecords, panId, type RackRecord } from '../../../src/domain/records/rack-records';
import { sealed } from '../../../src/domain/records/record-digest';
import { currentPan } from '../../../src/domain/records/standing/current-pan';
import { erasedIds } from '../../../src/domain/records/standing/without-erased';
import { backupFiles } from '../../../src/storage/backup/backup-files';
import { Database } from '../../../src/storage/database/database';
import { storeOf } from '../../../src/storage/database/database-structure';
import { addRecords } from '../../../src/storage/rack/add-records';
import { IndexedDbPanStore } from '../../../src/storage/rack/indexed-db-pan-store';
import { RackChanges } from '../../../src/storage/rack/rack-changes';
import {
  at,
  sampleAttachment,
  sampleEdit,
  sampleEnd,
  sampleErasure,
  sampleMark,
  samplePan,
  sampleReading,
  sampleRound,
  sampleStopgap,
} from '../../storage/rack/rack-sample';
import { type Chance, changedFile, type Way } from './changed-file';

const other = panId('pan-2');
const round = sampleRound('round-1');
const second = sampleRound('round-2', other);

/** Some as the app writes them now, some as older ones did, without a digest. */
const records: readonly RackRecord[] = [
  sampleEdit('edit-1', 'Heron'),
  round,
  sampleEnd('end-1', round),
  ...[60, 61, 62].map((note, k) => sampleReading(`reading-${k}`, round, note, k)),
  sampleMark('mark-1'),
  sampleMark('mark-2'),
  sampleErasure('erasure-1', 'mark-2'),
  sampleStopgap('stopgap-1', 72),
  sampleEdit('edit-2', 'Otter', other),
  second,
  sampleReading('reading-9', second, 60),
].map((record, k) => (k % 4 === 3 ? record : sealed(record)));
const attachments = [sampleAttachment('sound-1', 'sound', 60)];
const pans = [samplePan, other];

async function phone() {
  globalThis.indexedDB = new IDBFactory();
  const database = new Database();
  const changes = new RackChanges();
  const clock = { now: () => at(0) };
  const backups = backupFiles({ database, changes, clock, appVersion: '0.1.0' });
  const store = new IndexedDbPanStore(database, changes);
  await database.use((connection) => addRecords(connection, records, attachments));
  const entries = () =>
    database.use(async (connection) => {
      const names = [...Object.values(storeOf), 'attachments', 'beside'] as const;
      const found = new Map<string, string>();
      for (const name of names) {
        for (const row of await connection.getAll(name)) {
          const { id, key } = row as { readonly id: string; readonly key?: string };
          found.set(`${name} ${key ?? id}`, textOf(row));
        }
      }
      return found;
    });
  const panRecords = async (): Promise<readonly PanRecords[]> => {
    const loaded = await Promise.all(pans.map((pan) => store.pan(pan)));
    return loaded.map((each) => {
      if (each.kind !== 'loaded') throw new Error(each.trouble);
      return each.value;
    });
  };
  return { backups, entries, panRecords };
}

const textOf = (row: unknown): string =>
  JSON.stringify(row, (_, value: unknown) => (value instanceof Uint8Array ? [...value] : value));

export interface AttackCounts {
  files: number;
  /** Something was thrown. */
  crashed: number;
  refused: number;
  takenIn: number;
  /** Stored entries that are others afterwards. */
  changed: number;
  /** Entries that say something else than a stored one, told and kept beside it. */
  named: number;
  /** What is different on the rack and was not told: changed entries, or taken out, hidden, edited or kept beside. */
  unnamed: number;
}

/** Seeded: the same files each time. `tell` hears of every failure. */
export async function attack(
  files: number,
  chance: Chance,
  tell: (failure: string) => void,
): Promise<AttackCounts> {
  const counts: AttackCounts = {
    files: 0,
    crashed: 0,
    refused: 0,
    takenIn: 0,
    changed: 0,
    named: 0,
    unnamed: 0,
  };
  const first = await phone();
  const made = await first.backups.make({ kind: 'rack' }, undefined, 'text');
  if (made.kind !== 'made') throw new Error(made.trouble);
  const whole = await (made.file as File).text();
  let mine = first;
  for (; counts.files < files; counts.files++) {
    const way = (['bytes', 'lines', 'values'] as const)[counts.files % 3] as Way;
    const text = changedFile(whole, way, chance);
    try {
      if (await takeIn(mine, text, counts, tell)) mine = await phone();
    } catch (error) {
      counts.crashed++;
      tell(`crashed: ${String(error)}\n${text}`);
      mine = await phone();
    }
  }
  return counts;
}

/** Whether anything is different afterwards. */
async function takeIn(
  { backups, entries, panRecords }: Awaited<ReturnType<typeof phone>>,
  text: string,
  counts: AttackCounts,
  tell: (failure: string) => void,
): Promise<boolean> {
  const check = await backups.check(new File([text], 'rack.json'));
  if (check.kind === 'refused') {
    counts.refused++;
    return false;
  }
  const [before, pansBefore] = [await entries(), await panRecords()];
  const taken = await backups.takeIn(check.backup);
  if (taken.kind !== 'taken-in') throw new Error(taken.trouble);
  counts.takenIn++;
  counts.named += taken.differingCount;
  const [after, pansAfter] = [await entries(), await panRecords()];
  const unnamed = (what: string): void => {
    counts.unnamed++;
    tell(`${what}\n${text}`);
  };
  const told = new Set(taken.differing.map(({ id }) => id));
  for (const [name, row] of before) {
    if (after.get(name) === row) continue;
    counts.changed++;
    if (!told.has(name.split(' ')[1] ?? '')) unnamed(`changed: ${name}`);
  }
  const { effects } = check.backup;
  const toldBeside = new Set(taken.differing.map(({ key }) => `beside ${key}`));
  for (const name of after.keys()) {
    const isBeside = name.startsWith('beside ') && !before.has(name);
    if (isBeside && !toldBeside.has(name)) unnamed(`kept beside: ${name}`);
  }
  const erasedBy = (all: readonly PanRecords[]) =>
    erasedIds(all.flatMap(({ erasures }) => erasures));
  const [erasedBefore, erasedAfter] = [erasedBy(pansBefore), erasedBy(pansAfter)];
  const isStored = (id: string) =>
    Object.values(storeOf).some((store) => before.has(`${store} ${id}`));
  const gone = [...erasedAfter].filter((id) => !erasedBefore.has(id) && isStored(id));
  const toldGone = effects.erased.reduce((sum, { count }) => sum + count, 0);
  if (gone.length > toldGone) unnamed(`taken out: ${gone.join(', ')}`);
  for (const [k, pan] of pans.entries()) {
    const [was, is] = [pansBefore[k], pansAfter[k]];
    if (!was || !is) throw new Error(`lost: ${pan}`);
    const [fields, now] = [currentPan(was).fields, currentPan(is).fields];
    if (textOf(fields) === textOf(now)) continue;
    const isTold = effects.hidden.includes(pan) || effects.edited.includes(pan);
    const isErased = toldGone > 0;
    if (!isTold && !isErased) unnamed(`other details: ${pan}`);
  }
  return after.size !== before.size || counts.changed > 0;
}
