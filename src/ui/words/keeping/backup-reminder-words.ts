// What the rack says of a backup that is due: apart from the other words of backups, because the rack comes first.

import type { BackupReminder } from '../../../domain/rack/backup-reminder';

export const reminderWords = (reminder: BackupReminder): string =>
  reminder.kind === 'days'
    ? `${reminder.isFirst ? 'The rack without backup' : 'The last backup'} is ${reminder.days} days old.`
    : `${reminder.count} ${reminder.kind} are in no backup yet.`;
