// The rack as a file and back, on one database.
import type { BackupFiles } from '../../domain/ports/backup-files';
import type { Clock } from '../../domain/ports/phone-ports';
import type { Database } from '../database/database';
import { storeTrouble } from '../database/store-trouble';
import type { RackChanges } from '../rack/rack-changes';
import { settleBeside } from '../rack/settle-beside';
import { checkBackup } from './check-backup';
import { makeBackup } from './make-backup';
import { takeInBackup } from './take-in-backup';

export interface BackupSurroundings {
  readonly database: Database;
  /** The same one as the store's, so that everybody hears what was taken in. */
  readonly changes: RackChanges;
  readonly clock: Clock;
  readonly appVersion: string;
}

const nobody = (): void => undefined;

export const backupFiles = ({
  database,
  changes,
  clock,
  appVersion,
}: BackupSurroundings): BackupFiles => ({
  make: (scope, onProgress = nobody, form = 'packed') =>
    makeBackup(database, { scope, form, made: clock.now(), appVersion }, onProgress),
  check: (file, onProgress = nobody) => checkBackup(database, file, onProgress),
  takeIn: (backup, onProgress = nobody) => takeInBackup(database, changes, backup, onProgress),
  async settle(key, whose) {
    try {
      const pans = await database.write((connection) => settleBeside(connection, key, whose));
      if (pans.length > 0) changes.announce({ pans, own: null });
      return { kind: 'kept' };
    } catch (error) {
      return { kind: 'trouble', trouble: storeTrouble(error) };
    }
  },
});
