// Backups of given parts, for tests.
import type { BackupPart } from '../../../../src/domain/records/backup/backup-format';
import {
  type BackupLimits,
  backupLimits,
} from '../../../../src/domain/records/backup/backup-limits';
import { BackupReader } from '../../../../src/domain/records/backup/backup-reader';
import type { BackupVerdict } from '../../../../src/domain/records/backup/backup-verdict';
import { BackupWriter } from '../../../../src/domain/records/backup/backup-writer';
import { crc32Of } from '../../../../src/domain/records/backup/crc-32';
import { instant } from '../../../../src/domain/tuning/units';

export const header = { made: instant(1_764_100_000_000), app: '0.1.0', pans: 2 };

export function written(parts: readonly BackupPart[]): string {
  const writer = new BackupWriter();
  const begun = writer.begin(header);
  return begun + parts.map((part) => writer.add(part)).join('') + writer.end();
}

export interface ReadBackup {
  readonly parts: readonly BackupPart[];
  readonly verdict: BackupVerdict;
  readonly charactersRead: number;
}

/** The file read in pieces of `size` characters. */
export function read(text: string, size = 1_000, limits: Partial<BackupLimits> = {}): ReadBackup {
  const reader = new BackupReader({ ...backupLimits, ...limits });
  const parts: BackupPart[] = [];
  let at = 0;
  for (; at < text.length && !reader.isStopped; at += size) {
    parts.push(...reader.push(text.slice(at, at + size)));
  }
  const { parts: last, verdict } = reader.end();
  return { parts: [...parts, ...last], verdict, charactersRead: Math.min(at, text.length) };
}

/** A line as a writer would make it, of any text. */
export const signed = (json: string): string => `["${crc32Of(json)}",${json}]`;
