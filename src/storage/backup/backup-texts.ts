// The text of a backup, piece by piece.
import type { BackupScope, Progress } from '../../domain/ports/backup-files';
import type { ContentsTally } from '../../domain/records/backup/backup-contents';
import type { BackupHeader } from '../../domain/records/backup/backup-format';
import { BackupWriter } from '../../domain/records/backup/backup-writer';
import type { Database } from '../database/database';
import { countEntries, partsOfPan, partsOfRack } from '../rack/rack-parts';

export interface WrittenTally {
  records: number;
  attachments: number;
  readonly contents: ContentsTally;
  /** Stored entries that could not be read. */
  leftOut: number;
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
  const pans =
    scope.kind === 'pan' ? 1 : await database.use((connection) => connection.count('cards'));
  // A pan is quickly done.
  const total = scope.kind === 'pan' ? Number.POSITIVE_INFINITY : await countEntries(database);
  let done = 0;
  yield writer.begin({ ...header, pans });
  const batches = scope.kind === 'pan' ? partsOfPan(database, scope.pan) : partsOfRack(database);
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
