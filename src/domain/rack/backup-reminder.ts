// Whether it is time to remind, gently, of a backup.
import type { Instant } from '../tuning/units';

export interface BackupAge {
  readonly now: Instant;
  /** When the last backup was made on this phone, or null if none ever was. */
  readonly lastBackupAt: Instant | null;
  /** Readings kept since then, or at all. */
  readonly newReadings: number;
  /** How often anything else was written since then: layouts, marks, visits, photos. */
  readonly otherChanges: number;
  /** When the oldest record that is in no backup was kept, or null if everything is in one. */
  readonly oldestUnsavedAt: Instant | null;
}

export type BackupReminder =
  | { readonly kind: 'readings'; readonly count: number }
  | { readonly kind: 'changes'; readonly count: number }
  | {
      readonly kind: 'days';
      readonly days: number;
      /** There has been no backup yet: the days are counted from the oldest record. */
      readonly isFirst: boolean;
    };

/** Own choice, as are the next two. */
const readingsBeforeReminder = 10;
/** As many as of readings. */
const changesBeforeReminder = 10;
const daysBeforeReminder = 30;
const day = 86_400_000;

/**
 * A reminder when ten readings or ten other changes are in no backup, or when anything is in none and the last backup (without one,
 * the oldest record) is 30 days old. Null otherwise: nobody is reminded of a rack that is safe.
 */
export function backupReminder(age: BackupAge): BackupReminder | null {
  const { now, lastBackupAt, newReadings, otherChanges, oldestUnsavedAt } = age;
  if (oldestUnsavedAt === null) return null;
  if (newReadings >= readingsBeforeReminder) return { kind: 'readings', count: newReadings };
  if (otherChanges >= changesBeforeReminder) return { kind: 'changes', count: otherChanges };
  const days = Math.floor((now - (lastBackupAt ?? oldestUnsavedAt)) / day);
  return days >= daysBeforeReminder ? { kind: 'days', days, isFirst: lastBackupAt === null } : null;
}
