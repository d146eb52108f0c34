// Restores what a store of the database holds; what cannot be saved is left out and named in the repairs.
import type { Attachment, RackRecord } from '../../domain/records/rack-records';
import { restoreAttachment } from '../../domain/records/restore/restore-attachment';
import { type LeftOut, restoreRecord } from '../../domain/records/restore/restore-record';

type OfKind<Kind> = Extract<RackRecord, { kind: Kind }>;

/** All records of `kind` among `stored`, in their order; what was wrong is added to `repairs` with the id of its record. */
export function restoreKept<Kind extends RackRecord['kind']>(
  kind: Kind,
  stored: readonly unknown[],
  repairs: string[],
): readonly OfKind<Kind>[] {
  return stored.flatMap((each) => {
    const restored = restoreRecord(each);
    const name = nameOf(each);
    if (restored.kind === 'left-out') {
      repairs.push(leftOutLine(name, restored));
      return [];
    }
    repairs.push(...restored.repairs.map((part) => `${name}: ${part}`));
    const { record } = restored;
    if (record.kind === kind) return [record as OfKind<Kind>];
    repairs.push(`${name}: kind`);
    return [];
  });
}

/** The attachment in a row of its store, or null where there is none or it cannot be saved. */
export function restoreAttachmentRow(row: unknown, repairs: string[]): Attachment | null {
  if (typeof row !== 'object' || row === null || !('attachment' in row)) return null;
  const restored = restoreAttachment(row.attachment);
  if (restored.kind === 'left-out') {
    repairs.push(leftOutLine(nameOf(row), restored));
    return null;
  }
  return restored.attachment;
}

const nameOf = (stored: unknown): string =>
  typeof stored === 'object' && stored !== null && 'id' in stored ? String(stored.id) : 'record';

const leftOutLine = (name: string, { why, parts }: LeftOut): string =>
  `${name}: left out (${[why, ...parts].join(', ')})`;
