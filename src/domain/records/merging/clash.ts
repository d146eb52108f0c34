// Two entries of one name, one kept here and one that came with a file: what becomes of them.
import { canonicalText } from '../canonical-text';
import type { Attachment, RackRecord } from '../rack-records';
import { fitsDigest } from '../record-digest';
import { compareText } from '../record-order';
import { restoreAttachment } from '../restore/restore-attachment';
import { type LeftOut, restoreRecord } from '../restore/restore-record';

/**
 * `same`: both say the same. `heals`: the one that is kept is damaged, and the other is whole. `differs`: both are
 * whole; the kept one stays in place. `unreadable`: a newer version wrote the kept one, and nobody can tell.
 */
export type Clash = 'same' | 'heals' | 'differs' | 'unreadable';

/** `there` is what the store holds under the name of `record`. */
export function recordClash(record: RackRecord, there: unknown): Clash {
  const kept = restoreRecord(there);
  if (kept.kind === 'left-out') return lost(kept);
  if (isSameRecord(kept.record, record)) return 'same';
  if (!fitsDigest(there as object)) return 'heals';
  // Without a digest, whatever had to be repaired gives way to the one that holds more.
  const isSure = (there as { readonly digest?: unknown }).digest !== undefined;
  if (isSure || kept.repairs.length === 0) return 'differs';
  return chosenRecord(kept.record, record) === record ? 'heals' : 'differs';
}

/**
 * Which of two records with the same id holds more: of damaged ones without a digest it is the better one. The
 * choice depends on nothing but the two.
 */
function chosenRecord(one: RackRecord, other: RackRecord): RackRecord {
  const [first, second] = [contentOf(one), contentOf(other)];
  return (first.length - second.length || compareText(first, second)) < 0 ? other : one;
}

export function attachmentClash(attachment: Attachment, there: unknown): Clash {
  const kept = restoreAttachment(there);
  if (kept.kind === 'left-out') return lost(kept);
  return isSameAttachment(kept.attachment, attachment) ? 'same' : 'differs';
}

/** What a newer version wrote cannot be read here, and leaving it out loses nothing. */
const lost = ({ why }: LeftOut): Clash =>
  why === 'newer' || why === 'unknown-kind' ? 'unreadable' : 'heals';

/** A record is the same with its digest or without, and in whatever order its fields were written. */
export function isSameRecord(one: RackRecord, other: RackRecord): boolean {
  if (one.digest !== undefined && other.digest !== undefined && one.digest !== other.digest) {
    return false;
  }
  return contentOf(one) === contentOf(other);
}

const contentOf = ({ digest: _, ...content }: RackRecord): string => canonicalText(content);

function isSameAttachment(one: Attachment, other: Attachment): boolean {
  const { bytes, ...rest } = one;
  const { bytes: otherBytes, ...otherRest } = other;
  return (
    bytes.length === otherBytes.length &&
    canonicalText(rest) === canonicalText(otherRest) &&
    bytes.every((byte, k) => byte === otherBytes[k])
  );
}
