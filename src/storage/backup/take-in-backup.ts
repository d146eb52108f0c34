// Adds what a checked backup holds to the rack, batch by batch: taking it in again finishes what was interrupted.
import type { BackupTakenIn, CheckedBackup, Progress } from '../../domain/ports/backup-files';
import type { BackupPart } from '../../domain/records/backup/backup-format';
import { BackupReader } from '../../domain/records/backup/backup-reader';
import type { Differing } from '../../domain/records/merging/differing';
import { mostListed } from '../../domain/records/merging/file-effects';
import type { PanId } from '../../domain/records/rack-records';
import type { Database } from '../database/database';
import { storeTrouble } from '../database/store-trouble';
import { addParts } from '../rack/add-records';
import type { RackChanges } from '../rack/rack-changes';
import { unpackText } from './unpack-file';

/** Most records and bytes written in one transaction (chosen, no source). */
const recordsAtOnce = 2000;
const bytesAtOnce = 4 * 1024 * 1024;

/** Resolves once all of it is on disk. Everybody is told which pans have something new, even after a failure. */
export async function takeInBackup(
  database: Database,
  changes: RackChanges,
  { file, report }: CheckedBackup,
  onProgress: Progress,
): Promise<BackupTakenIn> {
  const changed = new Set<PanId>();
  const added = { records: 0, attachments: 0 };
  let healed = 0;
  const differing = new Map<string, Differing>();
  let moreDiffering = 0;
  const keep = async (parts: readonly BackupPart[]) => {
    const news = await database.write((connection) => addParts(connection, parts, 'compare'));
    added.records += news.records;
    added.attachments += news.attachments;
    healed += news.healed;
    for (const each of news.differing) {
      // An entry that a file holds twice is reported once.
      if (differing.size < mostListed || differing.has(each.key)) differing.set(each.key, each);
      else moreDiffering++;
    }
    for (const pan of news.pans) changed.add(pan);
  };
  let keeping = Promise.resolve();
  /** Keeps `parts` once all before are kept, while the next are read. */
  const keepBehind = async (parts: readonly BackupPart[]) => {
    await keeping;
    keeping = keep(parts);
    keeping.catch(() => undefined);
  };
  try {
    const reader = new BackupReader();
    for await (const parts of batchesOf(file as File, reader, onProgress)) await keepBehind(parts);
    const { parts, verdict } = reader.end();
    await keepBehind(parts);
    await keeping;
    const isSame =
      (verdict.kind === 'whole' || verdict.kind === 'in-part') &&
      verdict.report.taken.records === report.taken.records &&
      verdict.report.taken.attachments === report.taken.attachments;
    if (!isSame) return { kind: 'trouble', trouble: 'file-changed' };
    return {
      kind: 'taken-in',
      added,
      pans: [...changed],
      healed,
      differing: [...differing.values()],
      differingCount: differing.size + moreDiffering,
    };
  } catch (error) {
    const isFile = error instanceof FileFailed;
    return { kind: 'trouble', trouble: isFile ? 'file-changed' : storeTrouble(error) };
  } finally {
    await keeping.catch(() => undefined);
    if (changed.size > 0) changes.announce({ pans: [...changed], own: null });
  }
}

/** The file could be read when it was checked, and now it cannot. */
class FileFailed extends Error {
  override readonly name = 'FileFailed';
}

async function* batchesOf(
  file: File,
  reader: BackupReader,
  onProgress: Progress,
): AsyncGenerator<readonly BackupPart[]> {
  let parts: BackupPart[] = [];
  let bytes = 0;
  const texts = unpackText(file);
  for (;;) {
    const { done, value } = await texts.next().catch((error: unknown) => {
      throw new FileFailed('The file cannot be read any more.', { cause: error });
    });
    if (done) break;
    for (const part of reader.push(value.text)) {
      parts.push(part);
      if (part.kind === 'attachment') bytes += part.attachment.bytes.length;
    }
    if (parts.length >= recordsAtOnce || bytes >= bytesAtOnce) {
      yield parts;
      parts = [];
      bytes = 0;
      onProgress(value.read / file.size);
    }
    if (reader.isStopped) break;
  }
  await texts.return(undefined);
  yield parts;
}
