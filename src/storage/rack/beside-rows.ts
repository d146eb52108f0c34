// What came with files under the name of a kept entry but says something else: kept whole, and part of no result.
import type { BackupPart } from '../../domain/records/backup/backup-format';
import { besideKey, type Differing } from '../../domain/records/merging/differing';
import { type PanId, panId } from '../../domain/records/rack-records';
import { restoreAttachment } from '../../domain/records/restore/restore-attachment';
import { restoreRecord } from '../../domain/records/restore/restore-record';

export interface BesideRow {
  readonly key: string;
  readonly id: string;
  /** The pan of the entry in place, where people look for it. */
  readonly pan: PanId;
  readonly part: BackupPart;
  /** Somebody has said which of the two is right: it is not asked again. */
  readonly isSettled: boolean;
}

export const idOf = (part: BackupPart): string =>
  part.kind === 'record' ? part.record.id : part.attachment.id;

export const panOfPart = (part: BackupPart): PanId =>
  part.kind === 'record' ? part.record.pan : part.attachment.pan;

/** The pan of something that is stored; null where it cannot be read. */
export function panOfStored(stored: unknown): PanId | null {
  if (typeof stored !== 'object' || stored === null || !('pan' in stored)) return null;
  return typeof stored.pan === 'string' ? panId(stored.pan) : null;
}

/** What is told of `part`, which differs from what is stored under its name. */
export const differingOf = (part: BackupPart, there: unknown): Differing => ({
  key: besideKey(part),
  id: idOf(part),
  pan: panOfStored(there) ?? panOfPart(part),
  kind: part.kind === 'record' ? part.record.kind : part.attachment.kind,
});

/** A valid row, or null where it cannot be read. */
export function restoreBesideRow(stored: unknown): BesideRow | null {
  if (typeof stored !== 'object' || stored === null) return null;
  const { key, id, pan, part, isSettled } = stored as Readonly<Record<string, unknown>>;
  const restored = restorePart(part);
  if (typeof key !== 'string' || typeof pan !== 'string' || restored === null) return null;
  if (idOf(restored) !== id) return null;
  return { key, id, pan: panId(pan), part: restored, isSettled: isSettled === true };
}

function restorePart(stored: unknown): BackupPart | null {
  if (typeof stored !== 'object' || stored === null) return null;
  const { record, attachment } = stored as Readonly<Record<string, unknown>>;
  if (record !== undefined) {
    const restored = restoreRecord(record);
    return restored.kind === 'restored' ? { kind: 'record', record: restored.record } : null;
  }
  const restored = restoreAttachment(attachment);
  return restored.kind === 'restored'
    ? { kind: 'attachment', attachment: restored.attachment }
    : null;
}
