// Whether an entry of a backup is better than the one of the same name that is kept: only where that one is damaged.

import type { Attachment, RackRecord } from '../../domain/records/rack-records';
import { restoreAttachment } from '../../domain/records/restore/restore-attachment';
import { type LeftOut, restoreRecord } from '../../domain/records/restore/restore-record';
import { chosenAttachment, chosenRecord } from '../../domain/records/standing/merge-records';

export function isBetterRecord(record: RackRecord, there: unknown): boolean {
  const kept = restoreRecord(there);
  if (kept.kind === 'left-out') return isLost(kept);
  return kept.record.kind !== record.kind || chosenRecord(kept.record, record) === record;
}

/** `there` is a row of the store of attachments. */
export function isBetterAttachment(attachment: Attachment, there: unknown): boolean {
  const kept = restoreAttachment((there as { readonly attachment?: unknown }).attachment);
  if (kept.kind === 'left-out') return isLost(kept);
  return chosenAttachment(kept.attachment, attachment) === attachment;
}

/** What a newer version wrote cannot be read here and is no loss. */
const isLost = ({ why }: LeftOut): boolean => why !== 'newer' && why !== 'unknown-kind';
