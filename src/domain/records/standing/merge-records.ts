// Two phones' records brought together: all of both, each once. Nothing is lost and nothing doubled.
import { canonicalText } from '../canonical-text';
import type { Attachment, RackRecord } from '../rack-records';
import { compareText, olderFirst } from '../record-order';

/**
 * All records of both, oldest first. The order of the two, and how often they are merged, make no difference;
 * of two different records with the same id, `chosenRecord` is kept.
 */
export function mergeRecords<T extends RackRecord>(
  ours: readonly T[],
  theirs: readonly T[],
): readonly T[] {
  const byId = new Map<string, T>();
  for (const record of [...ours, ...theirs]) {
    const there = byId.get(record.id);
    byId.set(record.id, there ? chosenRecord(there, record) : record);
  }
  return [...byId.values()].sort(olderFirst);
}

/**
 * Which of two records with the same id is kept. They only differ where one was damaged and repaired (or made
 * up), so it is the one that holds more; the choice depends on nothing but the two.
 */
export function chosenRecord<T extends RackRecord>(one: T, other: T): T {
  if (one === other) return one;
  const [first, second] = [canonicalText(one), canonicalText(other)];
  return compareContent(first, second) < 0 ? other : one;
}

/** Which of two attachments with the same id is kept: the one with more bytes; `chosenRecord` says why. */
export function chosenAttachment(one: Attachment, other: Attachment): Attachment {
  if (one === other) return one;
  const byBytes = one.bytes.length - other.bytes.length || compareBytes(one.bytes, other.bytes);
  if (byBytes !== 0) return byBytes < 0 ? other : one;
  const [first, second] = [one, other].map(({ bytes: _, ...rest }) => canonicalText(rest));
  return compareContent(first ?? '', second ?? '') < 0 ? other : one;
}

const compareContent = (one: string, other: string): number =>
  one.length - other.length || compareText(one, other);

function compareBytes(one: Uint8Array, other: Uint8Array): number {
  for (let k = 0; k < one.length; k++) {
    const difference = (one[k] ?? 0) - (other[k] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
