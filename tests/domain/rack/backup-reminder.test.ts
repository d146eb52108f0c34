import { describe, expect, it } from 'vitest';
import { type BackupAge, backupReminder } from '../../../src/domain/rack/backup-reminder';
import { instant } from '../../../src/domain/tuning/units';

const day = 86_400_000;
const now = instant(100 * day);
const age = (parts: Partial<BackupAge>): BackupAge => ({
  now,
  lastBackupAt: instant(99 * day),
  newReadings: 1,
  otherChanges: 0,
  oldestUnsavedAt: instant(99.5 * day),
  ...parts,
});

describe('the reminder of a backup', () => {
  it('comes with the tenth reading that is in none', () => {
    expect(backupReminder(age({ newReadings: 9 }))).toBeNull();
    expect(backupReminder(age({ newReadings: 10 }))).toEqual({ kind: 'readings', count: 10 });
  });

  it('comes with the tenth change of any other kind that is in none', () => {
    expect(backupReminder(age({ otherChanges: 9 }))).toBeNull();
    expect(backupReminder(age({ otherChanges: 10 }))).toEqual({ kind: 'changes', count: 10 });
  });

  it('comes when something is in none and the last is 30 days old', () => {
    const lastBackupAt = instant(70 * day);
    expect(backupReminder(age({ lastBackupAt }))).toEqual({
      kind: 'days',
      days: 30,
      isFirst: false,
    });
    expect(backupReminder(age({ lastBackupAt: instant(70 * day + 1) }))).toBeNull();
  });

  it('comes 30 days after the first record if there never was one', () => {
    const never = { lastBackupAt: null };
    expect(backupReminder(age(never))).toBeNull();
    expect(backupReminder(age({ ...never, oldestUnsavedAt: instant(60 * day) }))).toEqual({
      kind: 'days',
      days: 40,
      isFirst: true,
    });
  });

  it('never comes while everything is in the last one, or the rack is empty', () => {
    const safe = { oldestUnsavedAt: null, newReadings: 0 };
    expect(backupReminder(age({ ...safe, lastBackupAt: instant(0) }))).toBeNull();
    expect(backupReminder(age({ ...safe, lastBackupAt: null }))).toBeNull();
  });

  it('does not come because the clock was turned back', () => {
    expect(backupReminder(age({ lastBackupAt: instant(500 * day) }))).toBeNull();
  });
});
