// What the rack says of a backup that is due: apart from the other words of backups, because the rack comes first.

import type { BackupReminder } from '../../../domain/rack/backup-reminder';

import { counted, pluralOf } from '../count-words';

export const reminderWords = (reminder: BackupReminder): string =>
  reminder.kind === 'days'
    ? `${reminder.isFirst ? 'The rack without backup' : 'The last backup'} is ${counted(reminder.days, 'day')} old.`
    : `${counted(reminder.count, reminder.kind.replace(/s$/, ''))} ${pluralOf(reminder.count, 'is', 'are')} in no backup yet.`;
