// The rack as a file and back.
import type {
  BackupCheck,
  BackupFiles,
  BackupMade,
  BackupScope,
  BackupTakenIn,
  CheckedBackup,
  Progress,
} from '../../domain/ports/backup-files';
import type { FileForm, FileOnHand } from '../../domain/ports/file-handout';
import type { Clock } from '../../domain/ports/phone-ports';
import { ContentsTally } from '../../domain/records/backup/backup-contents';
import type { Database } from '../database/database';
import { storeTrouble } from '../database/store-trouble';
import type { RackChanges } from '../rack/rack-changes';
import { backupTexts } from './backup-texts';
import { checkBackup } from './check-backup';
import { packFile } from './pack-file';
import { takeInBackup } from './take-in-backup';

export interface BackupSurroundings {
  readonly database: Database;
  /** The same one as of the store, so that everybody hears of what was taken in. */
  readonly changes: RackChanges;
  readonly clock: Clock;
  readonly appVersion: string;
}

export class IndexedDbBackupFiles implements BackupFiles {
  readonly #around: BackupSurroundings;

  constructor(around: BackupSurroundings) {
    this.#around = around;
  }

  async make(
    scope: BackupScope,
    onProgress: Progress = () => undefined,
    form: FileForm = 'packed',
  ): Promise<BackupMade> {
    const { database, clock, appVersion } = this.#around;
    const made = clock.now();
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

  check(file: FileOnHand, onProgress: Progress = () => undefined): Promise<BackupCheck> {
    return checkBackup(file, onProgress);
  }

  takeIn(backup: CheckedBackup, onProgress: Progress = () => undefined): Promise<BackupTakenIn> {
    const { database, changes } = this.#around;
    return takeInBackup(database, changes, backup, onProgress);
  }
}

/** "ringwright-rack-2026-11-25.json", by the calendar of the phone. */
function fileName(scope: BackupScope, made: Date): string {
  const date = [made.getFullYear(), made.getMonth() + 1, made.getDate()]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
  // What any system takes in the name of a file.
  const name = scope.kind === 'pan' ? scope.name.replace(/[^\p{L}\p{N}]+/gu, '-') : 'rack';
  const plain = name.slice(0, 40).replace(/^-+|-+$/g, '');
  return `ringwright-${plain || 'pan'}-${date}.json`;
}
