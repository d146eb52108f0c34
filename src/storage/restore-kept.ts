// Restores what a store of the database holds; what cannot be saved is left out and counted as a repair.
import type { Attachment, RackRecord } from '../domain/records/rack-records';
import type { Restored } from '../domain/records/settings';

/** Placeholder until the restore functions of the domain are here. */
const restoreRecord = (stored: unknown): Restored<RackRecord | null> => ({
  value: stored as RackRecord,
  repairs: [],
});

/** All records of `kind` among `stored`, in their order, and what had to be repaired. */
export function restoreKept<Kind extends RackRecord['kind']>(
  kind: Kind,
  stored: readonly unknown[],
  repairs: string[],
): readonly Extract<RackRecord, { kind: Kind }>[] {
  return stored.flatMap((each) => {
    const restored = restoreRecord(each);
    repairs.push(...restored.repairs);
    const record = restored.value;
    return record?.kind === kind ? [record as Extract<RackRecord, { kind: Kind }>] : [];
  });
}

/** The attachment in a row of its store, or null where there is none or it cannot be saved. */
export function restoreAttachmentRow(row: unknown, _repairs: string[]): Attachment | null {
  if (typeof row !== 'object' || row === null || !('attachment' in row)) return null;
  return row.attachment as Attachment;
}
