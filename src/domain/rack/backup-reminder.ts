// Whether it is time to remind, gently, of a backup.
import type { Instant } from '../tuning/units';

export interface BackupAge {
  readonly now: Instant;
  /** When the last backup was made on this phone, or null if none ever was. */
  readonly lastBackupAt: Instant | null;
  /** Readings kept since then, or at all. */
  readonly newReadings: number;
  /** When the oldest record that is in no backup was kept, or null if everything is in one. */
  readonly oldestUnsavedAt: Instant | null;
}

export type BackupReminder =
  | { readonly kind: 'readings'; readonly count: number }
  | { readonly kind: 'days'; readonly days: number };

const readingsBeforeReminder = 10;
const daysBeforeReminder = 30;
const day = 86_400_000;

/**
 * A reminder when ten readings are in no backup, or when anything is in none and the last backup (without one,
 * the oldest record) is 30 days old. Null otherwise: nobody is reminded of a rack that is safe.
 */
export function backupReminder(age: BackupAge): BackupReminder | null {
  const { now, lastBackupAt, newReadings, oldestUnsavedAt } = age;
  if (oldestUnsavedAt === null) return null;
  if (newReadings >= readingsBeforeReminder) return { kind: 'readings', count: newReadings };
  const days = Math.floor((now - (lastBackupAt ?? oldestUnsavedAt)) / day);
  return days >= daysBeforeReminder ? { kind: 'days', days } : null;
}
