// Makes the file of a backup, with the truth about what is in it.
import type { BackupMade, BackupScope, Progress } from '../../domain/ports/backup-files';
import type { FileForm } from '../../domain/ports/file-handout';
import { ContentsTally } from '../../domain/records/backup/backup-contents';
import type { Instant } from '../../domain/tuning/units';
import type { Database } from '../database/database';
import { storeTrouble } from '../database/store-trouble';
import { backupTexts } from './backup-texts';
import { packFile } from './pack-file';

export interface BackupToMake {
  readonly scope: BackupScope;
  readonly form: FileForm;
  readonly made: Instant;
  readonly appVersion: string;
}

/** Never rejects. */
export async function makeBackup(
  database: Database,
  { scope, form, made, appVersion }: BackupToMake,
  onProgress: Progress,
): Promise<BackupMade> {
  try {
    const tally = { records: 0, attachments: 0, leftOut: 0, contents: new ContentsTally() };
    const header = { made, app: appVersion };
    const texts = backupTexts(database, scope, header, tally, onProgress);
    const file = await packFile(texts, fileName(scope, new Date(made)), form);
    const { records, attachments, leftOut } = tally;
    const { contents } = tally.contents;
    return { kind: 'made', file, counts: { records, attachments }, contents, leftOut };
  } catch (error) {
    return { kind: 'trouble', trouble: storeTrouble(error) };
  }
}

/** "ringwright-rack-2026-11-25.json", by the calendar of the phone. */
function fileName(scope: BackupScope, made: Date): string {
  const date = [made.getFullYear(), made.getMonth() + 1, made.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
  // The characters that any system accepts in the name of a file.
  const name =
    scope.kind === 'pan'
      ? scope.name.replace(/[^\p{L}\p{N}]+/gu, '-')
      : scope.kind === 'pans'
        ? `${scope.pans.length}-pans`
        : 'rack';
  const plain = name.slice(0, 40).replace(/^-+|-+$/g, '');
  return `ringwright-${plain || 'pan'}-${date}.json`;
}
