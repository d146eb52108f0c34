// Entries of a file that have the name of one that is kept and say something else: they are kept beside it.
import type { BackupPart } from '../backup/backup-format';
import { toBase64 } from '../backup/base64';
import { crc32Of } from '../backup/crc-32';
import type { Attachment, PanId, RackRecord } from '../rack-records';
import { digestOf } from '../record-digest';

/** What people are told about one: where it belongs and what it is. */
export interface Differing {
  /** The name of the other one among those that are kept beside. */
  readonly key: string;
  readonly id: string;
  /** The pan of the one that is in place; the other may name another one. */
  readonly pan: PanId;
  readonly kind: RackRecord['kind'] | Attachment['kind'];
}

/** The name of an entry among those that are kept beside others: its own, and what it says. */
export function besideKey(part: BackupPart): string {
  if (part.kind === 'record') return `${part.record.id} ${digestOf(part.record)}`;
  const { bytes, ...rest } = part.attachment;
  return `${rest.id} ${digestOf({ ...rest, bytes: crc32Of(toBase64(bytes)) })}`;
}
