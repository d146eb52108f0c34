// The text of a backup, piece by piece.
import type { BackupScope, Progress } from '../../domain/ports/backup-files';
import type { ContentsTally } from '../../domain/records/backup/backup-contents';
import type { BackupHeader } from '../../domain/records/backup/backup-format';
import { BackupWriter } from '../../domain/records/backup/backup-writer';
import type { PanId } from '../../domain/records/rack-records';
import type { Database } from '../database/database';
import { countEntries, type PartsBatch, partsOfPan, partsOfRack } from '../rack/rack-parts';

export interface WrittenTally {
  records: number;
  attachments: number;
  readonly contents: ContentsTally;
  /** Stored entries that could not be read. */
  leftOut: number;
}

async function* partsOfPans(
  database: Database,
  pans: readonly PanId[],
): AsyncGenerator<PartsBatch> {
  for (const pan of pans) yield* partsOfPan(database, pan);
}

/** Counts into `tally` what it writes. Rejects with the errors of the database. */
export async function* backupTexts(
  database: Database,
  scope: BackupScope,
  header: Omit<BackupHeader, 'pans'>,
  tally: WrittenTally,
  onProgress: Progress,
): AsyncGenerator<string> {
  const writer = new BackupWriter();
  const some = scope.kind === 'rack' ? null : scope.kind === 'pan' ? [scope.pan] : scope.pans;
  const pans =
    some === null ? await database.use((connection) => connection.count('cards')) : some.length;
  // A single pan is done quickly.
  const total = some === null ? await countEntries(database) : Number.POSITIVE_INFINITY;
  let done = 0;
  yield writer.begin({ ...header, pans });
  const batches = some === null ? partsOfRack(database) : partsOfPans(database, some);
  for await (const { parts, count } of batches) {
    for (const part of parts) {
      tally.contents.add(part);
      if (part.kind === 'record') tally.records += 1;
      else tally.attachments += 1;
    }
    tally.leftOut += count - parts.length;
    done += count;
    onProgress(Math.min(1, done / total));
    if (parts.length > 0) yield parts.map((part) => writer.add(part)).join('');
  }
  yield writer.end();
  onProgress(1);
}
